import type { Database as Sqlite } from "better-sqlite3";
import { eq, sql } from "drizzle-orm";
import { bitQueryColumns } from "../bits/query-columns.ts";
import { inspectionDue } from "../bits/standing.ts";
import type { Database } from "./database.ts";
import { toRecord } from "./record-reads.ts";
import { bits } from "./tables/rack.ts";

/** Written out, not bound, so that SQLite sees that the index of bits without words is enough. */
const WITHOUT_WORDS = sql`${bits.words} = ''`;

/** Makes what a migration could not of bits that are older than it: SQL does not know what they are found by, nor when they are due. */
export function reindexBits(sqlite: Sqlite, database: Database): void {
  const missing = database.select().from(bits).where(WITHOUT_WORDS).all();
  if (missing.length === 0) return;
  sqlite
    .transaction(() => {
      for (const row of missing) {
        const record = toRecord("bit", row);
        const { reorderReason = null, ...columns } = bitQueryColumns(record);
        const { inspectionDueAt = null } = inspectionDue(record, record.updatedAt);
        database
          .update(bits)
          .set({ ...columns, reorderReason, inspectionDueAt })
          .where(eq(bits.number, row.number))
          .run();
      }
    })
    .immediate();
}
