import { and, eq, gt, gte, type SQL, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { type RecordReads, recordReads, toRecord } from "../store/record-reads.ts";
import { bits } from "../store/tables/rack.ts";
import type { BitRecord } from "./schema.ts";

/** What a list of bits is narrowed to. */
export type BitFilter = {
  /** A query of the word index; undefined for every bit. */
  readonly match?: string;
  /** Only bits that may run at least this fast. */
  readonly ceilingFromRpm?: number;
};

/** A bit with the number that pages go on from. */
export type NumberedBit = { readonly id: string; readonly record: BitRecord };

export type BitReads = RecordReads<"bit"> & {
  readonly search: (afterNumber: number, most: number, filter: BitFilter) => Promise<NumberedBit[]>;
  /** Bits that belong to a place or were last seen there. */
  readonly ofPlace: (placeId: string, most: number) => Promise<BitRecord[]>;
};

export function bitReads(database: Database): BitReads {
  const reads = recordReads(database, "bit");
  const ofPlace = database
    .select()
    .from(bits)
    .where(sql`${bits.number} IN (
      SELECT number FROM bits WHERE home_place_id = ${sql.placeholder("placeId")}
      UNION SELECT number FROM bits WHERE place_id = ${sql.placeholder("placeId")})`)
    .orderBy(bits.number)
    .limit(sql.placeholder("most"))
    .prepare();

  return {
    ...reads,
    ofPlace: async (placeId, most) => ofPlace.all({ placeId, most }).map((row) => toRecord("bit", row)),
    search: async (afterNumber, most, { match, ceilingFromRpm }) => {
      const conditions: SQL[] = [gt(bits.number, afterNumber)];
      if (ceilingFromRpm !== undefined) conditions.push(gte(bits.ceilingRpm, ceilingFromRpm));
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

function numbered(row: typeof bits.$inferSelect): NumberedBit {
  return { id: String(row.number), record: toRecord("bit", row) };
}
