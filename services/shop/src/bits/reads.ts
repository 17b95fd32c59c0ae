import type { DialSpeed } from "@rimwise/domain";
import { and, eq, gt, gte, or, type SQL, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordReads, toRecord } from "../store/record-reads.ts";
import { bits } from "../store/tables/rack.ts";
import type { BitRecord } from "./schema.ts";

/** What a list of bits is narrowed to. */
export type BitFilter = {
  /** A query of the word index; undefined for every bit. */
  readonly match?: string;
  /** Only bits that may run at one of these speeds. */
  readonly runsAt?: readonly Pick<DialSpeed, "rpm" | "rpmHighest">[];
};

/** A bit with the number that pages go on from. */
export type NumberedBit = { readonly id: string; readonly record: BitRecord };

export type BitReads = RecordReads<"bit"> & {
  readonly search: (afterNumber: number, most: number, filter: BitFilter) => Promise<NumberedBit[]>;
};

export function bitReads(database: Database): BitReads {
  const reads = recordReads(database, "bit");
  return {
    ...reads,
    search: async (afterNumber, most, { match, runsAt }) => {
      const conditions: SQL[] = [gt(bits.number, afterNumber)];
      if (runsAt !== undefined) conditions.push(runsAtAny(runsAt));
      const all = database.select().from(bits);
      // The index is read in the order of its row numbers, so that a page costs what is on it.
      const found =
        match === undefined
          ? all.where(and(...conditions)).orderBy(bits.number)
          : all
              .innerJoin(sql`bit_index`, eq(bits.number, sql`bit_index.rowid`))
              .where(and(sql`bit_index MATCH ${match}`, sql`bit_index.rowid > ${afterNumber}`, ...conditions))
              .orderBy(sql`bit_index.rowid`);
      return found
        .limit(most)
        .all()
        .map((row) => numbered("bits" in row ? Object(row).bits : row));
    },
  };
}

/** A hard limit is held by the fastest a setting may truly give, a guide by its nominal speed. */
function runsAtAny(speeds: readonly Pick<DialSpeed, "rpm" | "rpmHighest">[]): SQL {
  const each = speeds.map(({ rpm, rpmHighest }) =>
    and(gte(bits.ceilingRpm, rpmHighest), gte(bits.guideRpm, rpm)),
  );
  return or(...each) ?? sql`FALSE`;
}

function numbered(row: typeof bits.$inferSelect): NumberedBit {
  return { id: String(row.number), record: toRecord("bit", row) };
}
