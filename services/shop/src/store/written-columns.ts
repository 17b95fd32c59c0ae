import { type Column, getTableColumns } from "drizzle-orm";
import { isAssigned } from "./columns.ts";
import type { Kept, Kind } from "./kind.ts";
import type { Change } from "./port.ts";
import type { Question } from "./query.ts";
import type { Computed } from "./store.ts";

/** Records that memory holds while their query columns are computed again. */
export const RECORDS_AT_ONCE = 100;

/** A column by the field that it keeps. */
export type WrittenColumn = readonly [field: string, column: Column];

/** The columns of a kind that are written: all but those that the database gives a value. */
export function writtenColumns({ table, queryColumns = {} }: Kind): WrittenColumn[] {
  return Object.entries<Column>(getTableColumns(table)).filter(([field]) => !isAssigned(queryColumns[field]));
}

/** What a row has in these columns, as it is written; NULL for a field that is absent. */
export function columnValues(columns: readonly WrittenColumn[], row: object): unknown[] {
  return columns.map(([field, column]) => {
    const value: unknown = Reflect.get(row, field) ?? null;
    return value === null ? null : column.mapToDriverValue(value);
  });
}

/** The query columns of a record as they are now; undefined for a kind of which none are computed. */
export function* queryColumnsOf(
  computed: readonly Computed[],
  { type, queryColumns }: Kind,
  record: Kept,
): Question<object | undefined> {
  if (queryColumns === undefined || Object.values(queryColumns).every(isAssigned)) return undefined;
  const found = computed.find(({ kind }) => kind.type === type);
  if (found === undefined) throw new Error(`nothing says how the query columns of ${type} are computed`);
  return yield* found.of(record);
}

/** What has to be computed again after these changes. */
export function restingOn(changes: readonly Change[], computed: readonly Computed[]): Computed[] {
  const changed = new Set(changes.map(({ kind }) => kind.type));
  return computed.filter(({ restOn }) => restOn.some(({ type }) => changed.has(type)));
}
