import { and, asc, desc, eq, gt, isNull, type SQL } from "drizzle-orm";
import type { Kind, RecordOf } from "./kind.ts";
import { all, first, given, type Query, type Question, recordQuery } from "./query.ts";

/** Fields that a list may be narrowed by, each with its value; null asks for records without the field. */
export type Where<K extends Kind> = {
  readonly [Field in keyof RecordOf<K>]?: string | null | undefined;
};

/** What every kind of record can be asked for. */
export type RecordQueries<K extends Kind> = {
  readonly kind: K;
  readonly find: (id: string) => Question<RecordOf<K> | undefined>;
  /** Oldest first, after the record with this id. The fields asked for need an index that ends in `id`. */
  readonly page: (afterId: string, most: number, where?: Where<K>) => Question<RecordOf<K>[]>;
  /** The latest ones, newest first. */
  readonly newest: (most: number, where?: Where<K>) => Question<RecordOf<K>[]>;
};

/** The queries of a kind: by id, and pages in order of it. */
export function recordQueries<K extends Kind>(kind: K): RecordQueries<K> {
  const id = kind.column("id");
  const byId = recordQuery(kind, (rows) => rows.where(eq(id, given("id"))));
  const lists = new Map<string, Query<RecordOf<K>>>();

  function listQuery(equal: readonly string[], missing: readonly string[], isNewestFirst: boolean) {
    return recordQuery(kind, (rows) => {
      const conditions: SQL[] = isNewestFirst ? [] : [gt(id, given("afterId"))];
      for (const name of equal) conditions.push(eq(kind.column(name), given(name)));
      for (const name of missing) conditions.push(isNull(kind.column(name)));
      return rows
        .where(and(...conditions))
        .orderBy(isNewestFirst ? desc(id) : asc(id))
        .limit(given("most"));
    });
  }

  function* list(where: Where<K>, most: number, afterId?: string): Question<RecordOf<K>[]> {
    const asked = Object.entries<string | null | undefined>(where).filter(([, value]) => value !== undefined);
    const equal = asked.filter(([, value]) => value !== null).map(([name]) => name);
    const missing = asked.filter(([, value]) => value === null).map(([name]) => name);
    const shape = `${equal.join()}|${missing.join()}|${afterId === undefined}`;
    const query = lists.get(shape) ?? listQuery(equal, missing, afterId === undefined);
    lists.set(shape, query);
    return yield* all(query, { ...Object.fromEntries(asked), afterId, most });
  }

  return {
    kind,
    find: (wanted) => first(byId, { id: wanted }),
    page: (afterId, most, where = {}) => list(where, most, afterId),
    newest: (most, where = {}) => list(where, most),
  };
}
