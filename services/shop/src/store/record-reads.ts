import { and, asc, type Column, desc, eq, getTableColumns, gt, isNull, type SQL, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import type { Records, RecordType } from "./records.ts";
import { present } from "./rows.ts";
import { QUERY_COLUMNS, RECORD_TABLES } from "./tables.ts";

/** Fields that a list may be narrowed by, each with its value; null asks for records without the field. */
export type Where<Type extends RecordType> = {
  readonly [Name in keyof Records[Type]]?: string | null | undefined;
};

/** The queries of a kind of record as they run inside a transaction, where nothing may wait. */
export type RecordQueries<Type extends RecordType> = {
  readonly find: (id: string) => Records[Type] | undefined;
  /** Oldest first, after the record with this id. The fields asked for need an index that ends in `id`. */
  readonly page: (afterId: string, most: number, where?: Where<Type>) => Records[Type][];
  /** The latest ones, newest first. */
  readonly newest: (most: number, where?: Where<Type>) => Records[Type][];
};

/** The same queries as the rest of the service knows them: the database may one day be elsewhere. */
export type RecordReads<Type extends RecordType> = {
  readonly [Name in keyof RecordQueries<Type>]: (
    ...given: Parameters<RecordQueries<Type>[Name]>
  ) => Promise<ReturnType<RecordQueries<Type>[Name]>>;
};

/** What every kind of record can be read by: its id, and pages in order of it. */
export function recordReads<Type extends RecordType>(database: Database, type: Type): RecordReads<Type> {
  const { find, page, newest } = recordQueries(database, type);
  return {
    find: async (id) => find(id),
    page: async (afterId, most, where) => page(afterId, most, where),
    newest: async (most, where) => newest(most, where),
  };
}

/** The same, at once: for what is decided inside a transaction. */
export function recordQueries<Type extends RecordType>(database: Database, type: Type): RecordQueries<Type> {
  const table = RECORD_TABLES[type];
  const all: Readonly<Record<string, Column>> = getTableColumns(table);
  const byId = database
    .select()
    .from(table)
    .where(eq(table.id, sql.placeholder("id")))
    .prepare();
  const queries = new Map<string, ReturnType<typeof prepareList>>();

  function prepareList(equal: readonly string[], missing: readonly string[], isNewestFirst: boolean) {
    const conditions: SQL[] = isNewestFirst ? [] : [gt(table.id, sql.placeholder("afterId"))];
    for (const name of equal) conditions.push(eq(columnOf(all, name), sql.placeholder(name)));
    for (const name of missing) conditions.push(isNull(columnOf(all, name)));
    return database
      .select()
      .from(table)
      .where(and(...conditions))
      .orderBy(isNewestFirst ? desc(table.id) : asc(table.id))
      .limit(sql.placeholder("most"))
      .prepare();
  }

  function list(where: Where<Type>, most: number, afterId?: string): Records[Type][] {
    const given = Object.entries<string | null | undefined>(where).filter(([, value]) => value !== undefined);
    const equal = given.filter(([, value]) => value !== null).map(([name]) => name);
    const missing = given.filter(([, value]) => value === null).map(([name]) => name);
    const isNewestFirst = afterId === undefined;
    const shape = `${equal.join()}|${missing.join()}|${isNewestFirst}`;
    const query = queries.get(shape) ?? prepareList(equal, missing, isNewestFirst);
    queries.set(shape, query);
    return query.all({ ...Object.fromEntries(given), afterId, most }).map((row) => toRecord(type, row));
  }

  return {
    find: (id) => {
      const row = byId.get({ id });
      return row && toRecord(type, row);
    },
    page: (afterId, most, where = {}) => list(where, most, afterId),
    newest: (most, where = {}) => list(where, most),
  };
}

/**
 * A row of a table as its record: only the one door writes there, and only records of this type. Columns that serve
 * queries alone are left behind.
 */
export function toRecord<Type extends RecordType>(_type: Type, row: object): Records[Type] {
  return Object(
    Object.fromEntries(Object.entries(present(row)).filter(([name]) => !QUERY_COLUMNS.includes(name))),
  );
}

function columnOf(columns: Readonly<Record<string, Column>>, name: string): Column {
  const column = columns[name];
  if (column === undefined) throw new Error(`there is no column for ${name}`);
  return column;
}
