import { sql } from "drizzle-orm";
import { approvalKind } from "../approvals/kind.ts";
import { all, first, given, type Question, rowQuery } from "../store/query.ts";

/** Approvals that are read at once. */
export const MOST_AT_ONCE = 10_000;

/** What ends at the moment itself has ended: the first page begins behind all of it. */
const BEHIND_ALL = Number.MAX_SAFE_INTEGER;

/** An approval that ended before its time: until when its sheets would be believed, and its place in the list. */
export type Ended = { readonly until: string; readonly place: number };

const { column } = approvalKind;
const selection = { until: column("validUntil"), place: column("statusIndex") };

/** Ended before their time. */
const byEnd = rowQuery(
  selection,
  (_, dialect) => sql`SELECT valid_until, status_index FROM ${dialect.byIndex("approvals", "approvals_ended")}
    WHERE state IN ('lapsed', 'withdrawn', 'replaced') AND (valid_until, status_index) > (${given("until")}, ${given("place")})
    ORDER BY valid_until, status_index LIMIT ${given("most")}`,
);

/** Ended with a time that was cut short after sheets had been signed. */
const byCut = rowQuery(
  selection,
  (
    _,
    dialect,
  ) => sql`SELECT sheets_until, status_index FROM ${dialect.byIndex("approvals", "approvals_cut_short")}
    WHERE sheets_until IS NOT NULL AND (sheets_until, status_index) > (${given("until")}, ${given("place")}) AND (state <> 'issued' OR valid_until <= ${given("at")})
    ORDER BY sheets_until, status_index LIMIT ${given("most")}`,
);

const lastPlace = rowQuery(
  { last: sql<number | null>`max(status_index)` },
  () => sql`SELECT max(status_index) FROM ${approvalKind.table}`,
);

/** The parts that make up the list. */
export const ENDED = [byEnd, byCut];

/** So many of them, in their order, after one; `undefined` is before the first whose sheets could still be believed. */
export function* endedAfter(part: typeof byEnd, after: Ended | undefined, at: string): Question<Ended[]> {
  const rows = yield* all(part, { ...(after ?? { until: at, place: BEHIND_ALL }), at, most: MOST_AT_ONCE });
  return rows.map(({ until, place }) => ({ until: String(until), place: Number(place) }));
}

/** How many places are taken. */
export function* takenPlaces(): Question<number> {
  return ((yield* first(lastPlace))?.last ?? -1) + 1;
}
