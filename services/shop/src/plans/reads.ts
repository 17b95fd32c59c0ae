import { eq, gt, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { present } from "../store/rows.ts";
import { plans } from "../store/tables.ts";
import type { PlanRecord } from "./schema.ts";

export type PlanReads = {
  readonly find: (id: string) => Promise<PlanRecord | undefined>;
  readonly page: (afterId: string, most: number) => Promise<PlanRecord[]>;
};

export function planReads(database: Database): PlanReads {
  const byId = database
    .select()
    .from(plans)
    .where(eq(plans.id, sql.placeholder("id")))
    .prepare();
  const page = database
    .select()
    .from(plans)
    .where(gt(plans.id, sql.placeholder("afterId")))
    .orderBy(plans.id)
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
