import { gt, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { events } from "../store/tables.ts";
import type { EventRecord } from "./schema.ts";

export type EventReads = { readonly page: (after: number, most: number) => Promise<EventRecord[]> };

export function eventReads(database: Database): EventReads {
  const page = database
    .select()
    .from(events)
    .where(gt(events.sequence, sql.placeholder("after")))
    .orderBy(events.sequence)
    .limit(sql.placeholder("most"))
    .prepare();
  return { page: async (after, most) => page.all({ after, most }) };
}
