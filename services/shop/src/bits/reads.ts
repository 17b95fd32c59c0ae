import { eq, gt, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { present } from "../store/rows.ts";
import { bits } from "../store/tables.ts";
import type { BitRecord } from "./schema.ts";

export type BitReads = {
  readonly find: (id: string) => Promise<BitRecord | undefined>;
  readonly page: (afterId: string, most: number) => Promise<BitRecord[]>;
};

export function bitReads(database: Database): BitReads {
  const byId = database
    .select()
    .from(bits)
    .where(eq(bits.id, sql.placeholder("id")))
    .prepare();
  const page = database
    .select()
    .from(bits)
    .where(gt(bits.id, sql.placeholder("afterId")))
    .orderBy(bits.id)
    .limit(sql.placeholder("most"))
    .prepare();
  return {
    find: async (id) => {
      const row = byId.get({ id });
      return row && present(row);
    },
    page: async (afterId, most) => page.all({ afterId, most }).map(present),
  };
}
