import type { Database } from "../store/database.ts";
import { type RecordReads, recordReads } from "../store/record-reads.ts";

export type PlanReads = RecordReads<"plan">;

export function planReads(database: Database): PlanReads {
  return recordReads(database, "plan");
}
