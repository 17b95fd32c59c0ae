import { and, asc, desc, eq, getTableColumns, gt, gte, lt, lte, ne, type SQL, sql } from "drizzle-orm";
import type { Database } from "../store/database.ts";
import { present } from "../store/rows.ts";
import { events } from "../store/tables/history.ts";
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

/** Every event of a time window is in here; others may be, where the clock was set back. */
export type Span = { readonly first: number; readonly last: number };

export type EventCount = { readonly by: string; readonly type: string; readonly count: number };

/** A row as it is kept, nothing read from it: somebody may have written anything there. */
export type KeptEvent = Omit<EventRecord, "data" | "why"> & {
  readonly data: string;
  readonly why: string | null;
  readonly latestAt: string;
};

export type EventReads = {
  /** In order, after this sequence. */
  readonly page: (after: number, most: number, filter?: EventFilter) => Promise<EventRecord[]>;
  readonly latest: () => Promise<{ sequence: number; hash: string } | undefined>;
  readonly span: (window: TimeWindow) => Promise<Span>;
  /** How many events of a window each caller made of each type, among those from `first` to `last`. */
  readonly counts: (span: Span, window: Required<TimeWindow>) => Promise<EventCount[]>;
  /** Whether anything but events of this type came after a sequence. */
  readonly hasOtherThan: (type: string, after: number) => Promise<boolean>;
  readonly kept: (from: number, most: number) => Promise<KeptEvent[]>;
};

type Shape = Readonly<Record<keyof EventFilter, boolean>>;

export function eventReads(database: Database): EventReads {
  const pages = new Map<string, ReturnType<typeof eventPage>>();
  const latest = database
    .select({ sequence: events.sequence, hash: events.hash })
    .from(events)
    .orderBy(desc(events.sequence))
    .limit(1)
    .prepare();
  const { data: _, ...plain } = getTableColumns(events);
  const kept = database
    .select({ ...plain, data: sql<string>`${events.data}` })
    .from(events)
    .where(gte(events.sequence, sql.placeholder("from")))
    .orderBy(asc(events.sequence))
    .limit(sql.placeholder("most"))
    .prepare();
  const otherThan = database
    .select({ sequence: events.sequence })
    .from(events)
    .where(and(gt(events.sequence, sql.placeholder("after")), ne(events.type, sql.placeholder("type"))))
    .orderBy(asc(events.sequence))
    .limit(1)
    .prepare();
  const spanOf = spanReads(database);
  const counts = eventCounts(database);
  return {
    page: async (after, most, filter = {}) => {
      const { subjectId, by, type, since, until } = filter;
      const shape = shapeOf(filter);
      const name = JSON.stringify(shape);
      const query = pages.get(name) ?? eventPage(database, shape);
      pages.set(name, query);
      const { first, last } = spanOf({ since, until });
      const from = Math.max(after + 1, first);
      return query.all({ from, last, most, subjectId, by, type, since, until }).map(present);
    },
    latest: async () => latest.get(),
    span: async (window) => spanOf(window),
    counts: async ({ first, last }, { since, until }) => counts.all({ first, last, since, until }),
    hasOtherThan: async (type, after) => otherThan.get({ type, after }) !== undefined,
    kept: async (from, most) => kept.all({ from, most }),
  };
}

/** Which fields of a filter are given: each combination is a query of its own. */
export function shapeOf({ subjectId, by, type, since, until }: EventFilter): Shape {
  return {
    subjectId: subjectId !== undefined,
    by: by !== undefined,
    type: type !== undefined,
    since: since !== undefined,
    until: until !== undefined,
  };
}

/** The query of a page, by an index that is in order of sequence: it visits no more than the page and its misses. */
export function eventPage(database: Database, shape: Shape) {
  const { latestAt: _, ...shown } = getTableColumns(events);
  const conditions: SQL[] = [
    gte(events.sequence, sql.placeholder("from")),
    lte(events.sequence, sql.placeholder("last")),
  ];
  if (shape.subjectId) conditions.push(eq(events.subjectId, sql.placeholder("subjectId")));
  conditions.push(...callerAndType(shape));
  if (shape.since) conditions.push(gte(events.at, sql.placeholder("since")));
  if (shape.until) conditions.push(lt(events.at, sql.placeholder("until")));
  return database
    .select(shown)
    .from(events)
    .where(and(...conditions))
    .orderBy(asc(events.sequence))
    .limit(sql.placeholder("most"))
    .prepare();
}

/** The index that narrows most is the only one that fits: a `+` before a column takes it out of the planner's choice. */
function callerAndType({ subjectId, by, type }: Shape): SQL[] {
  const given = { by: sql.placeholder("by"), type: sql.placeholder("type") };
  if (by && type && !subjectId) {
    return [sql`${events.by} || ' ' || ${events.type} = ${given.by} || ' ' || ${given.type}`];
  }
  // A record has few events, so its own index does best.
  const free = subjectId ? sql`+` : sql``;
  return [
    ...(by ? [sql`${free}${events.by} = ${given.by}`] : []),
    ...(type ? [sql`${free}${events.type} = ${given.type}`] : []),
  ];
}

/**
 * Where a time window lies in the order. The first event at or after `since` is the first whose `latestAt` is. The last one
 * before `until` comes before the first whose `latestAt` is not, unless it was written while the clock was behind.
 */
function spanReads(database: Database): (window: TimeWindow) => Span {
  const firstFrom = database
    .select({ sequence: events.sequence })
    .from(events)
    .where(gte(events.latestAt, sql.placeholder("at")))
    .orderBy(asc(events.latestAt), asc(events.sequence))
    .limit(1)
    .prepare();
  const lastBehind = latestBehind(database);
  const endOf = (until: string) => {
    const next = firstFrom.get({ at: until })?.sequence;
    if (next === undefined) return Number.MAX_SAFE_INTEGER;
    return Math.max(next - 1, lastBehind.get({ at: until })?.sequence ?? 0);
  };
  return ({ since, until }) => ({
    first: since === undefined ? 1 : (firstFrom.get({ at: since })?.sequence ?? Number.MAX_SAFE_INTEGER),
    last: until === undefined ? Number.MAX_SAFE_INTEGER : endOf(until),
  });
}

/** The latest event before a time that was written while the clock was behind. */
export function latestBehind(database: Database) {
  return (
    database
      // Without the `+` every event would be looked through from the end, for the first that fits.
      .select({ sequence: sql<number | null>`max(+${events.sequence})` })
      .from(events)
      .where(and(lt(events.at, events.latestAt), lt(events.at, sql.placeholder("at"))))
      .prepare()
  );
}

function eventCounts(database: Database) {
  return database
    .select({ by: events.by, type: events.type, count: sql<number>`count(*)` })
    .from(events)
    .where(
      and(
        gte(events.sequence, sql.placeholder("first")),
        lte(events.sequence, sql.placeholder("last")),
        // The span already narrows: these must not make another index look better.
        sql`+${events.at} >= ${sql.placeholder("since")}`,
        sql`+${events.at} < ${sql.placeholder("until")}`,
      ),
    )
    .groupBy(sql`+${events.by}`, sql`+${events.type}`)
    .prepare();
}
