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
  const searches = new Map<string, ReturnType<typeof searchOf>>();
  return {
    ...recordReads(database, "bit"),
    search: async (afterNumber, most, { match, runsAt }) => {
      const shape = `${match !== undefined} ${runsAt?.length}`;
      const search = searches.get(shape) ?? searchOf(database, match !== undefined, runsAt?.length);
      searches.set(shape, search);
      const speeds = runsAt?.flatMap(({ rpm, rpmHighest }, index) => [
        [`rpm${index}`, rpm],
        [`rpmHighest${index}`, rpmHighest],
      ]);
      return search
        .all({ afterNumber, most, match, ...Object.fromEntries(speeds ?? []) })
        .map((row) => numbered("bits" in row ? Object(row).bits : row));
    },
  };
}

/** A search by words or without, for bits that may run at any of so many speeds. */
function searchOf(database: Database, hasMatch: boolean, speeds: number | undefined) {
  const afterNumber = sql.placeholder("afterNumber");
  const conditions: SQL[] = [gt(bits.number, afterNumber)];
  if (speeds !== undefined) conditions.push(runsAtAny(speeds));
  const all = database.select().from(bits);
  // The index is read in the order of its row numbers, so that a page costs what is on it.
  const found = hasMatch
    ? all
        .innerJoin(sql`bit_index`, eq(bits.number, sql`bit_index.rowid`))
        .where(
          and(
            sql`bit_index MATCH ${sql.placeholder("match")}`,
            sql`bit_index.rowid > ${afterNumber}`,
            ...conditions,
          ),
        )
        .orderBy(sql`bit_index.rowid`)
    : all.where(and(...conditions)).orderBy(bits.number);
  return found.limit(sql.placeholder("most")).prepare();
}

/** A hard limit is held by the fastest a setting may truly give, a guide by its nominal speed. */
function runsAtAny(count: number): SQL {
  const each = Array.from({ length: count }, (_, index) =>
    and(
      gte(bits.ceilingRpm, sql.placeholder(`rpmHighest${index}`)),
      gte(bits.guideRpm, sql.placeholder(`rpm${index}`)),
    ),
  );
  return or(...each) ?? sql`FALSE`;
}

function numbered(row: typeof bits.$inferSelect): NumberedBit {
  return { id: String(row.number), record: toRecord("bit", row) };
}
