import { and, asc, desc, gt, isNotNull, lt, lte, or, type SQL, sql } from "drizzle-orm";
import type { BitRecord } from "../bits/schema.ts";
import type { Database } from "../store/database.ts";
import { toRecord } from "../store/record-reads.ts";
import { bits } from "../store/tables/rack.ts";

/** Where a page goes on from: the value it is ordered by, and the bit that had it. */
export type After<Value> = { readonly value: Value; readonly bitId: string };

export type StockReads = {
  /** Bits whose inspection is due at a moment, the longest due first. */
  readonly due: (at: string, after: After<string> | undefined, most: number) => Promise<BitRecord[]>;
  /** Bits by minutes run, the most used first. */
  readonly mostUsed: (after: After<number> | undefined, most: number) => Promise<BitRecord[]>;
  /** Bits another of which is to be bought, with why. */
  readonly toReorder: (afterId: string, most: number) => Promise<{ record: BitRecord; reason: string }[]>;
};

export function stockReads(database: Database): StockReads {
  return {
    due: async (at, after, most) => {
      const conditions: SQL[] = [isNotNull(bits.inspectionDueAt), lte(bits.inspectionDueAt, at)];
      // A row value lets SQLite go straight to the place in the index.
      if (after !== undefined) {
        conditions.push(sql`(${bits.inspectionDueAt}, ${bits.id}) > (${after.value}, ${after.bitId})`);
      }
      const rows = database
        .select()
        .from(bits)
        .where(and(...conditions));
      return rows
        .orderBy(asc(bits.inspectionDueAt), asc(bits.id))
        .limit(most)
        .all()
        .map((row) => toRecord("bit", row));
    },
    mostUsed: async (after, most) => {
      const further =
        after === undefined
          ? gt(bits.usedMinutes, 0)
          : and(
              gt(bits.usedMinutes, 0),
              lte(bits.usedMinutes, after.value),
              or(lt(bits.usedMinutes, after.value), gt(bits.id, after.bitId)),
            );
      return database
        .select()
        .from(bits)
        .where(further)
        .orderBy(desc(bits.usedMinutes), asc(bits.id))
        .limit(most)
        .all()
        .map((row) => toRecord("bit", row));
    },
    toReorder: async (afterId, most) =>
      database
        .select()
        .from(bits)
        .where(and(isNotNull(bits.reorderReason), gt(bits.id, afterId)))
        .orderBy(asc(bits.id))
        .limit(most)
        .all()
        .map((row) => ({ record: toRecord("bit", row), reason: row.reorderReason ?? "" })),
  };
}
