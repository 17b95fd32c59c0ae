import { and, asc, desc, eq, getTableColumns, gt, gte, lt, lte, ne, type SQL, sql } from "drizzle-orm";
import type { Dialect } from "../store/dialect.ts";
import { events as table } from "../store/history-tables.ts";
import { all, first, given, type Query, type Question, rowQuery } from "../store/query.ts";
import type { EventRecord } from "./schema.ts";

/** What events are narrowed by. Times are RFC 3339 in UTC with milliseconds, as events keep them. */
export type EventFilter = Matches & TimeWindow;

export type Matches = {
  readonly subjectId?: string | undefined;
  readonly by?: string | undefined;
  readonly type?: string | undefined;
};

export type TimeWindow = {
  /** At or after. */
  readonly since?: string | undefined;
  /** Before. */
  readonly until?: string | undefined;
};

/** Every event of a time window is in here; others may be, if the clock was set back. */
export type Span = { readonly first: number; readonly last: number };

export type EventCount = { readonly by: string; readonly type: string; readonly count: number };

/** A row as it is kept, nothing read from it: somebody may have written anything there. */
export type KeptEvent = Omit<EventRecord, "data" | "why" | "recordDigest"> & {
  readonly data: string;
  readonly why: string | null;
  readonly recordDigest: string | null;
  readonly latestAt: string;
};

export const events = {
  /** In order, after this sequence. */
  page,
  latest,
  span,
  /** How many events of a window each caller made of each type, among those from `first` to `last`. */
  counts,
  /** Whether anything but events of this type came after a sequence. */
  hasOtherThan,
  kept,
  /** Those among the events from one sequence to another after which nothing more happened to their record. */
  lastOfTheirs,
  /** The latest event of one record. */
  lastOf,
  /** The first event that states the digest of its record. */
  firstWithDigest,
};

type Shape = Readonly<Record<keyof EventFilter, boolean>>;

const { data: _, ...plain } = getTableColumns(table);
const { latestAt: __, ...shown } = getTableColumns(table);

const pages = new Map<string, Query<EventRecord>>();
const latestEvent = rowQuery({ sequence: table.sequence, hash: table.hash }, (selection) =>
  selection.from(table).orderBy(desc(table.sequence)).limit(1),
);
const keptEvents = rowQuery({ ...plain, data: sql<string>`${table.data}` }, (selection) =>
  selection
    .from(table)
    .where(gte(table.sequence, given("from")))
    .orderBy(asc(table.sequence))
    .limit(given("most")),
);
const lastOnes = rowQuery({ sequence: table.sequence, subjectId: table.subjectId }, (selection) =>
  selection.from(table).where(
    sql`${table.sequence} BETWEEN ${given("first")} AND ${given("last")} AND NOT EXISTS (
      SELECT 1 FROM events AS later WHERE later.subject_id = ${table.subjectId} AND later.sequence > ${table.sequence})`,
  ),
);
const lastEvent = rowQuery(
  {
    sequence: table.sequence,
    type: table.type,
    subjectVersion: table.subjectVersion,
    recordDigest: table.recordDigest,
  },
  (selection) =>
    selection
      .from(table)
      .where(eq(table.subjectId, given("subjectId")))
      .orderBy(desc(table.sequence))
      .limit(1),
);
const digested = rowQuery({ sequence: table.sequence, at: table.at }, (selection) =>
  selection.from(table).where(sql`${table.recordDigest} IS NOT NULL`).orderBy(asc(table.sequence)).limit(1),
);
const otherThan = rowQuery({ sequence: table.sequence }, (selection) =>
  selection
    .from(table)
    .where(and(gt(table.sequence, given("after")), ne(table.type, given("type"))))
    .orderBy(asc(table.sequence))
    .limit(1),
);
const countsOf = rowQuery(
  { by: table.by, type: table.type, count: sql<number>`count(*)` },
  (selection, dialect) => {
    // The span already narrows: these must not make another index look better.
    const { unindexed } = dialect;
    return selection
      .from(table)
      .where(
        and(
          gte(table.sequence, given("first")),
          lte(table.sequence, given("last")),
          sql`${unindexed(table.at)} >= ${given("since")}`,
          sql`${unindexed(table.at)} < ${given("until")}`,
        ),
      )
      .groupBy(unindexed(table.by), unindexed(table.type));
  },
);

/** The first event at or after `since` is the first whose `latestAt` is. */
const firstFrom = rowQuery({ sequence: table.sequence }, (selection) =>
  selection
    .from(table)
    .where(gte(table.latestAt, given("at")))
    .orderBy(asc(table.latestAt), asc(table.sequence))
    .limit(1),
);

/** The latest event before a time that was written while the clock was behind. */
export const latestBehind = rowQuery(
  { sequence: sql<number | null>`max(sequence)` },
  (_selection, dialect) =>
    // Indexed, every event would be looked through from the end, for the first that fits.
    sql`SELECT max(${dialect.unindexed(table.sequence)}) FROM ${table}
      WHERE ${table.at} < ${table.latestAt} AND ${table.at} < ${given("at")}`,
);

function* page(after: number, most: number, filter: EventFilter = {}): Question<EventRecord[]> {
  const { subjectId, by, type, since, until } = filter;
  const { first: from, last } = yield* span({ since, until });
  const values = { from: Math.max(after + 1, from), last, most, subjectId, by, type, since, until };
  return yield* all(eventPage(filter), values);
}

function latest(): Question<{ readonly sequence: number; readonly hash: string } | undefined> {
  return first(latestEvent);
}

function counts({ first: from, last }: Span, { since, until }: Required<TimeWindow>): Question<EventCount[]> {
  return all(countsOf, { first: from, last, since, until });
}

function* hasOtherThan(type: string, after: number): Question<boolean> {
  return (yield* first(otherThan, { type, after })) !== undefined;
}

function kept(from: number, most: number): Question<KeptEvent[]> {
  return all(keptEvents, { from, most });
}

/** The query of a page: each combination of given fields is one of its own. */
export function eventPage(filter: EventFilter): Query<EventRecord> {
  const shape = shapeOf(filter);
  const name = JSON.stringify(shape);
  const query = pages.get(name) ?? pageQuery(shape);
  pages.set(name, query);
  return query;
}

function shapeOf({ subjectId, by, type, since, until }: EventFilter): Shape {
  return {
    subjectId: subjectId !== undefined,
    by: by !== undefined,
    type: type !== undefined,
    since: since !== undefined,
    until: until !== undefined,
  };
}

/** Goes along an index that is in order of sequence: it visits no more than the page and its misses. */
function pageQuery(shape: Shape): Query<EventRecord> {
  const rows = rowQuery(shown, (selection, dialect) => {
    const conditions: SQL[] = [gte(table.sequence, given("from")), lte(table.sequence, given("last"))];
    if (shape.subjectId) conditions.push(eq(table.subjectId, given("subjectId")));
    conditions.push(...callerAndType(shape, dialect));
    if (shape.since) conditions.push(gte(table.at, given("since")));
    if (shape.until) conditions.push(lt(table.at, given("until")));
    return selection
      .from(table)
      .where(and(...conditions))
      .orderBy(asc(table.sequence))
      .limit(given("most"));
  });
  return {
    build: rows.build,
    read: (row) => {
      const { why, recordDigest, ...event } = rows.read(row);
      return { ...event, ...(why !== null && { why }), ...(recordDigest !== null && { recordDigest }) };
    },
  };
}

/** The index that narrows most must be the only one that fits. */
function callerAndType({ subjectId, by, type }: Shape, { unindexed }: Dialect): SQL[] {
  if (by && type && !subjectId) {
    return [sql`${table.by} || ' ' || ${table.type} = ${given("by")} || ' ' || ${given("type")}`];
  }
  // A record has few events, so its own index does best.
  const callerColumn = subjectId ? unindexed(table.by) : table.by;
  const typeColumn = subjectId ? unindexed(table.type) : table.type;
  return [
    ...(by ? [sql`${callerColumn} = ${given("by")}`] : []),
    ...(type ? [sql`${typeColumn} = ${given("type")}`] : []),
  ];
}

/**
 * Where a time window lies in the order. The last event before `until` comes before the first whose `latestAt` is not, unless it
 * was written while the clock was behind.
 */
function* span({ since, until }: TimeWindow): Question<Span> {
  return {
    first: since === undefined ? 1 : yield* startOf(since),
    last: until === undefined ? Number.MAX_SAFE_INTEGER : yield* endOf(until),
  };
}

function lastOfTheirs(
  firstSequence: number,
  last: number,
): Question<{ sequence: number; subjectId: string }[]> {
  return all(lastOnes, { first: firstSequence, last });
}

function firstWithDigest() {
  return first(digested);
}

function lastOf(subjectId: string) {
  return first(lastEvent, { subjectId });
}

function* startOf(since: string): Question<number> {
  return (yield* first(firstFrom, { at: since }))?.sequence ?? Number.MAX_SAFE_INTEGER;
}

function* endOf(until: string): Question<number> {
  const next = (yield* first(firstFrom, { at: until }))?.sequence;
  if (next === undefined) return Number.MAX_SAFE_INTEGER;
  return Math.max(next - 1, (yield* first(latestBehind, { at: until }))?.sequence ?? 0);
}
