import { and, asc, desc, eq, gt, isNull, lt, or, type SQL, type SQLWrapper, sql } from "drizzle-orm";
import type { Dialect } from "./dialect.ts";
import type { Kind, RecordOf } from "./kind.ts";
import { FIRST_PAGE, ORDERING_LETTERS, type Order, type PageStart } from "./order.ts";
import { all, first, given, type Query, type Question, recordQuery } from "./query.ts";
import type { Value } from "./values.ts";

/** Fields that a list may be narrowed by, each with its value or a list of values; null asks for records without the field. */
export type Where<K extends Kind> = {
  readonly [Field in keyof RecordOf<K>]?: Wanted | undefined;
};

type Wanted = string | null | { readonly list: readonly string[] };

/** What a list of named records is asked for. */
export type Ask<K extends Kind> = {
  readonly where?: Where<K>;
  /** Part of the name, folded. */
  readonly q?: string | undefined;
  readonly order?: Order | undefined;
};

/** What records can be asked for: all of them, or those that somebody may see. */
export type RecordView<K extends Kind> = {
  readonly find: (id: string) => Question<RecordOf<K> | undefined>;
  /** Oldest first, after the record with this id. The fields asked for need an index that ends in `id`. */
  readonly page: (afterId: string, most: number, where?: Where<K>) => Question<RecordOf<K>[]>;
  /** The same of named records: those whose name has `q` in it, in another order. It looks at every record. */
  readonly found: (start: PageStart, most: number, ask: Ask<K>) => Question<RecordOf<K>[]>;
  /** The latest ones, newest first. */
  readonly newest: (most: number, where?: Where<K>) => Question<RecordOf<K>[]>;
};

/** What every kind of record can be asked for. */
export type RecordQueries<K extends Kind> = RecordView<K> & {
  readonly kind: K;
  /** The same of what one person may see. Absent for kinds that everybody with the scope sees whole. */
  readonly seenBy?: (personId: string) => RecordView<K>;
};

/** Which rows one person may see, said once for every question about a kind: they are never sorted out after a page was cut. */
export type VisibleTo = (personId: SQLWrapper, dialect: Dialect) => SQL;

/** Only what is in a person's own name. */
export function ownOnly(kind: Kind): VisibleTo {
  return (personId) => eq(kind.column("personId"), personId);
}

/** The queries of a kind that everybody with its scope sees whole: by id, and pages in order of it. */
export function recordQueries<K extends Kind>(kind: K): RecordQueries<K> {
  return { kind, ...viewOf(kind, undefined)() };
}

/** The queries of a kind of which people who are not in charge see a part. */
export function restrictedQueries<K extends Kind>(kind: K, visible: VisibleTo) {
  return { kind, ...viewOf(kind, undefined)(), seenBy: viewOf(kind, visible) };
}

/** The condition that `visible` sets, where the person is given as `viewer`; none when everything is seen. */
export function visibleRows(visible: VisibleTo | undefined, dialect: Dialect): SQL[] {
  return visible === undefined ? [] : [visible(given("viewer"), dialect)];
}

function viewOf<K extends Kind>(kind: K, visible: VisibleTo | undefined) {
  const id = kind.column("id");
  const byId = recordQuery(kind, (rows, dialect) =>
    rows.where(and(eq(id, given("id")), ...visibleRows(visible, dialect))),
  );
  const lists = new Map<string, Query<RecordOf<K>>>();

  function listQuery(wanted: readonly (readonly [string, Wanted])[], { hasName, order, isAfter }: Shape) {
    return recordQuery(kind, (rows, dialect) => {
      const conditions: SQL[] = [];
      for (const [name, value] of wanted) {
        const column = kind.column(name);
        if (value === null) conditions.push(isNull(column));
        else if (typeof value === "string") conditions.push(eq(column, given(name)));
        else conditions.push(dialect.isIn(column, given(name)));
      }
      if (hasName) conditions.push(dialect.contains(kind.column("name"), given("q")));
      const [after, toward] = order.startsWith("-") ? [lt, desc] : [gt, asc];
      const key = order.endsWith("name")
        ? dialect.orderedBy(kind.column("name"), ORDERING_LETTERS)
        : undefined;
      if (isAfter) conditions.push(laterThan(key, after));
      return rows
        .where(and(...conditions, ...visibleRows(visible, dialect)))
        .orderBy(...(key === undefined ? [] : [toward(key)]), toward(id))
        .limit(given("most"));
    });
  }

  /** In the list's order after the record that the page before ended with. */
  function laterThan(key: SQL | undefined, after: typeof gt): SQL {
    const later = after(id, given("afterId"));
    if (key === undefined) return later;
    const name = given("afterName");
    return or(after(key, name), and(eq(key, name), later)) ?? sql`TRUE`;
  }

  function* list(
    viewer: string | undefined,
    start: PageStart,
    most: number,
    { where = {}, q, order = "createdAt" }: Ask<K>,
  ) {
    const wanted = Object.entries<Wanted | undefined>(where).filter(isWanted);
    const asked = { hasName: q !== undefined, order, isAfter: start.id !== "" };
    // Put together by hand: a plan asks for half a dozen lists, and general ways of merging objects took longer than their answers.
    let shape = `${order} ${asked.hasName} ${asked.isAfter}`;
    const values: Record<string, Value> = { afterId: start.id, afterName: start.name, q, most, viewer };
    for (const [name, value] of wanted) {
      shape += `|${shapeOf(name, value)}`;
      values[name] = value;
    }
    const query = lists.get(shape) ?? listQuery(wanted, asked);
    lists.set(shape, query);
    return yield* all(query, values);
  }

  return (viewer?: string): RecordView<K> => ({
    find: (wanted) => first(byId, { id: wanted, viewer }),
    page: (afterId, most, where = {}) => list(viewer, { id: afterId }, most, { where }),
    found: (start, most, ask) => list(viewer, start, most, ask),
    newest: (most, where = {}) => list(viewer, FIRST_PAGE, most, { where, order: "-createdAt" }),
  });
}

/** What lists of one kind differ in as queries. */
type Shape = { readonly hasName: boolean; readonly order: Order; readonly isAfter: boolean };

function isWanted(asked: readonly [string, Wanted | undefined]): asked is [string, Wanted] {
  return asked[1] !== undefined;
}

/** Lists that are narrowed alike are one query, whatever the values. */
function shapeOf(name: string, value: Wanted): string {
  if (value === null) return `${name} missing`;
  return typeof value === "string" ? name : `${name} in`;
}
