import type { Database as Sqlite } from "better-sqlite3";
import { eq } from "drizzle-orm";
import { bitQueryColumns } from "../bits/query-columns.ts";
import type { Database } from "./database.ts";
import { toRecord } from "./record-reads.ts";
import { bits } from "./tables/rack.ts";

/** Makes the query columns of bits that a migration could not: SQL does not know what a bit is found by. */
export function reindexBits(sqlite: Sqlite, database: Database): void {
  const missing = database.select().from(bits).where(eq(bits.words, "")).all();
  if (missing.length === 0) return;
  sqlite
    .transaction(() => {
      for (const row of missing) {
        const { reorderReason = null, ...columns } = bitQueryColumns(toRecord("bit", row));
        database
          .update(bits)
          .set({ ...columns, reorderReason })
          .where(eq(bits.number, row.number))
          .run();
      }
    })
    .immediate();
}
