import { and, asc, desc, eq, gt, isNotNull, lt, lte, or, sql } from "drizzle-orm";
import { bitKind } from "../bits/kind.ts";
import { REORDER_REASONS, type ReorderReason } from "../bits/query-columns.ts";
import type { BitRecord } from "../bits/schema.ts";
import { all, given, type Query, type Question, recordQuery } from "../store/query.ts";

/** Where a page goes on from: the value it is ordered by, and the bit that had it. */
export type After<Value> = { readonly value: Value; readonly bitId: string };

export const stock = { due, held, mostUsed, toReorder, setNames, ofSet };

const id = bitKind.column("id");
const dueAt = bitKind.column("inspectionDueAt");
const usedMinutes = bitKind.column("usedMinutes");
const reorderReason = bitKind.column("reorderReason");
const setName = bitKind.column("setName");

const duePage = (isFirst: boolean) =>
  recordQuery(bitKind, (rows) => {
    // A row value lets the planner go straight to the place in the index.
    const further = sql`(${dueAt}, ${id}) > (${given("value")}, ${given("bitId")})`;
    return rows
      .where(and(isNotNull(dueAt), lte(dueAt, given("at")), isFirst ? undefined : further))
      .orderBy(asc(dueAt), asc(id))
      .limit(given("most"));
  });
const usedPage = (isFirst: boolean) =>
  recordQuery(bitKind, (rows) => {
    const further = and(
      lte(usedMinutes, given("value")),
      or(lt(usedMinutes, given("value")), gt(id, given("bitId"))),
    );
    return rows
      .where(and(gt(usedMinutes, sql`0`), isFirst ? undefined : further))
      .orderBy(desc(usedMinutes), asc(id))
      .limit(given("most"));
  });
const DUE = { first: duePage(true), further: duePage(false) };
const USED = { first: usedPage(true), further: usedPage(false) };

// Written out, not bound: the index of what is held is used only when it can be read that only that is asked for.
const HELD = recordQuery(bitKind, (rows) =>
  rows
    .where(and(sql`${bitKind.column("state")} = 'held'`, gt(id, given("afterId"))))
    .orderBy(asc(id))
    .limit(given("most")),
);

const reorder = (() => {
  const records = recordQuery(bitKind, (rows) => rows);
  const width = bitKind.columns.size;
  const columns = sql.join([...bitKind.columns.values(), reorderReason], sql`, `);
  return {
    build: () => sql`SELECT ${columns} FROM ${bitKind.table}
      WHERE ${reorderReason} IS NOT NULL AND ${id} > ${given("afterId")}
      ORDER BY ${id} LIMIT ${given("most")}`,
    read: (row) => ({ record: records.read(row), reason: reasonIn(row[width]) }),
  } satisfies Query<{ record: BitRecord; reason: ReorderReason }>;
})();

const SET_NAMES = {
  build: () => sql`SELECT DISTINCT ${setName} FROM ${bitKind.table}
    WHERE ${setName} IS NOT NULL AND ${setName} > ${given("after")}
    ORDER BY ${setName} LIMIT ${given("most")}`,
  read: (row) => String(row[0]),
} satisfies Query<string>;

const OF_SET = recordQuery(bitKind, (rows) =>
  rows
    .where(and(isNotNull(setName), eq(setName, given("setName"))))
    .orderBy(asc(id))
    .limit(given("most")),
);

/** Bits whose inspection is due at a moment, the longest due first. */
function due(at: string, after: After<string> | undefined, most: number): Question<BitRecord[]> {
  return all(after === undefined ? DUE.first : DUE.further, { at, most, ...after });
}

/** Bits that are out of use until somebody in charge releases them. */
function held(afterId: string, most: number): Question<BitRecord[]> {
  return all(HELD, { afterId, most });
}

/** Bits by minutes run, the most used first. */
function mostUsed(after: After<number> | undefined, most: number): Question<BitRecord[]> {
  return all(after === undefined ? USED.first : USED.further, { most, ...after });
}

/** Bits another of which must be bought, with why. */
function toReorder(
  afterId: string,
  most: number,
): Question<{ readonly record: BitRecord; readonly reason: ReorderReason }[]> {
  return all(reorder, { afterId, most });
}

/** Names of sets of bits, after this one. */
function setNames(after: string, most: number): Question<string[]> {
  return all(SET_NAMES, { after, most });
}

/** The bits of one set, oldest first. */
function ofSet(name: string, most: number): Question<BitRecord[]> {
  return all(OF_SET, { setName: name, most });
}

function reasonIn(value: unknown): ReorderReason {
  const reason = REORDER_REASONS.find((each) => each === value);
  if (reason === undefined) throw new Error(`${String(value)} is no reason to reorder`);
  return reason;
}
