import { and, asc, desc, eq, gt, isNull, type SQL, type SQLWrapper } from "drizzle-orm";
import type { Dialect } from "./dialect.ts";
import type { Kind, RecordOf } from "./kind.ts";
import { all, first, given, type Query, type Question, recordQuery } from "./query.ts";

/** Fields that a list may be narrowed by, each with its value or a list of values; null asks for records without the field. */
export type Where<K extends Kind> = {
  readonly [Field in keyof RecordOf<K>]?: Wanted | undefined;
};

type Wanted = string | null | { readonly list: readonly string[] };

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

  function listQuery(wanted: readonly (readonly [string, Wanted])[], isNewestFirst: boolean) {
    return recordQuery(kind, (rows, dialect) => {
      const conditions: SQL[] = isNewestFirst ? [] : [gt(id, given("afterId"))];
      for (const [name, value] of wanted) {
        const column = kind.column(name);
        if (value === null) conditions.push(isNull(column));
        else if (typeof value === "string") conditions.push(eq(column, given(name)));
        else conditions.push(dialect.isIn(column, given(name)));
      }
      return rows
        .where(and(...conditions, ...visibleRows(visible, dialect)))
        .orderBy(isNewestFirst ? desc(id) : asc(id))
        .limit(given("most"));
    });
  }

  function* list(where: Where<K>, viewer: string | undefined, most: number, afterId?: string) {
    const wanted = Object.entries<Wanted | undefined>(where).filter(isWanted);
    const shape = [...wanted.map(shapeOf), afterId === undefined].join("|");
    const query = lists.get(shape) ?? listQuery(wanted, afterId === undefined);
    lists.set(shape, query);
    return yield* all(query, { ...Object.fromEntries(wanted), afterId, most, viewer });
  }

  return (viewer?: string): RecordView<K> => ({
    find: (wanted) => first(byId, { id: wanted, viewer }),
    page: (afterId, most, where = {}) => list(where, viewer, most, afterId),
    newest: (most, where = {}) => list(where, viewer, most),
  });
}

function isWanted(asked: readonly [string, Wanted | undefined]): asked is [string, Wanted] {
  return asked[1] !== undefined;
}

/** Lists that are narrowed alike are one query, whatever the values. */
function shapeOf([name, value]: readonly [string, Wanted]): string {
  if (value === null) return `${name} missing`;
  return typeof value === "string" ? name : `${name} in`;
}
