import { and, eq, gt, isNull, ne, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { present } from "../store/rows.ts";
import { keys } from "../store/tables.ts";
import type { KeyRecord } from "./schema.ts";

export type KeyReads = {
  readonly find: (id: string) => Promise<KeyRecord | undefined>;
  readonly findByDigest: (keySha256: string) => Promise<KeyRecord | undefined>;
  readonly page: (afterId: string, most: number) => Promise<KeyRecord[]>;
  /** A manager's key in force besides this one. */
  readonly otherManager: (id: string) => Promise<KeyRecord | undefined>;
  readonly isEmpty: () => Promise<boolean>;
};

export function keyReads(database: Database): KeyReads {
  const byId = database
    .select()
    .from(keys)
    .where(eq(keys.id, sql.placeholder("id")))
    .prepare();
  const byDigest = database
    .select()
    .from(keys)
    .where(eq(keys.keySha256, sql.placeholder("keySha256")))
    .prepare();
  const page = database
    .select()
    .from(keys)
    .where(gt(keys.id, sql.placeholder("afterId")))
    .orderBy(keys.id)
    .limit(sql.placeholder("most"))
    .prepare();
  const otherManager = database
    .select()
    .from(keys)
    .where(and(eq(keys.role, "manager"), isNull(keys.revokedAt), ne(keys.id, sql.placeholder("id"))))
    .limit(1)
    .prepare();
  const any = database.select({ id: keys.id }).from(keys).limit(1).prepare();
  return {
    find: async (id) => recordOf(byId.get({ id })),
    findByDigest: async (keySha256) => recordOf(byDigest.get({ keySha256 })),
    page: async (afterId, most) => page.all({ afterId, most }).map(present),
    otherManager: async (id) => recordOf(otherManager.get({ id })),
    isEmpty: async () => any.get() === undefined,
  };
}

function recordOf(row: typeof keys.$inferSelect | undefined): KeyRecord | undefined {
  return row && present(row);
}
