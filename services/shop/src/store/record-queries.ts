import { and, asc, desc, eq, gt, isNull, type SQL, type SQLWrapper } from "drizzle-orm";
import type { Dialect } from "./dialect.ts";
import type { Kind, RecordOf } from "./kind.ts";
import { all, first, given, type Query, type Question, recordQuery } from "./query.ts";

/** Fields that a list may be narrowed by, each with its value; null asks for records without the field. */
export type Where<K extends Kind> = {
  readonly [Field in keyof RecordOf<K>]?: string | null | undefined;
};

/** What records can be asked for: all of them, or those that somebody may see. */
export type RecordView<K extends Kind> = {
  readonly find: (id: string) => Question<RecordOf<K> | undefined>;
  /** Oldest first, after the record with this id. The fields asked for need an index that ends in `id`. */
  readonly page: (afterId: string, most: number, where?: Where<K>) => Question<RecordOf<K>[]>;
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

  function listQuery(equal: readonly string[], missing: readonly string[], isNewestFirst: boolean) {
    return recordQuery(kind, (rows, dialect) => {
      const conditions: SQL[] = isNewestFirst ? [] : [gt(id, given("afterId"))];
      for (const name of equal) conditions.push(eq(kind.column(name), given(name)));
      for (const name of missing) conditions.push(isNull(kind.column(name)));
      return rows
        .where(and(...conditions, ...visibleRows(visible, dialect)))
        .orderBy(isNewestFirst ? desc(id) : asc(id))
        .limit(given("most"));
    });
  }

  function* list(where: Where<K>, viewer: string | undefined, most: number, afterId?: string) {
    const asked = Object.entries<string | null | undefined>(where).filter(([, value]) => value !== undefined);
    const equal = asked.filter(([, value]) => value !== null).map(([name]) => name);
    const missing = asked.filter(([, value]) => value === null).map(([name]) => name);
    const shape = `${equal.join()}|${missing.join()}|${afterId === undefined}`;
    const query = lists.get(shape) ?? listQuery(equal, missing, afterId === undefined);
    lists.set(shape, query);
    return yield* all(query, { ...Object.fromEntries(asked), afterId, most, viewer });
  }

  return (viewer?: string): RecordView<K> => ({
    find: (wanted) => first(byId, { id: wanted, viewer }),
    page: (afterId, most, where = {}) => list(where, viewer, most, afterId),
    newest: (most, where = {}) => list(where, viewer, most),
  });
}
