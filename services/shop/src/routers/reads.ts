import { eq, gt, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { present } from "../store/rows.ts";
import { routers } from "../store/tables.ts";
import type { RouterRecord } from "./schema.ts";

export type RouterReads = {
  readonly find: (id: string) => Promise<RouterRecord | undefined>;
  readonly page: (afterId: string, most: number) => Promise<RouterRecord[]>;
};

export function routerReads(database: Database): RouterReads {
  const byId = database
    .select()
    .from(routers)
    .where(eq(routers.id, sql.placeholder("id")))
    .prepare();
  const page = database
    .select()
    .from(routers)
    .where(gt(routers.id, sql.placeholder("afterId")))
    .orderBy(routers.id)
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
