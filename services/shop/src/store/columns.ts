import { getTableColumns } from "drizzle-orm";
import {
  customType,
  integer,
  real,
  type SQLiteColumn,
  type SQLiteColumnBuilderBase,
  type SQLiteTable,
  sqliteTable,
  text,
} from "drizzle-orm/sqlite-core";
import type { TObject, TProperties, TSchema } from "typebox";

/**
 * How a field is kept. `row-number` is a lasting number that the database gives to a row and finds it by; an `assigned-number` it
 * gives as well; `derived-text` is what it takes out of another column.
 */
export type ColumnType =
  | "text"
  | "real"
  | "integer"
  | "boolean"
  | "json"
  | "bytes"
  | "row-number"
  | "assigned-number"
  | "derived-text";

/** The columns of a table that are no fields of its record. */
export type QueryColumnTypes = Readonly<Record<string, ColumnType | { readonly optional: ColumnType }>>;

export type RecordTable = {
  readonly table: SQLiteTable;
  readonly columns: ReadonlyMap<string, SQLiteColumn>;
  readonly queryColumns: ReadonlyMap<string, SQLiteColumn>;
  /** How each field is kept. */
  readonly types: ReadonlyMap<string, ColumnType>;
};

const ASSIGNED: readonly unknown[] = ["row-number", "assigned-number", "derived-text"];

/** Whether the database gives a column its value. */
export function isAssigned(type: QueryColumnTypes[string] | undefined): boolean {
  return ASSIGNED.includes(type);
}

/** The schema keyword that says how a field is kept when its JSON type does not. */
export const COLUMN_KEYWORD = "x-column";

const BY_JSON_TYPE: Readonly<Record<string, ColumnType>> = {
  string: "text",
  number: "real",
  integer: "integer",
  boolean: "boolean",
};

/** A column that keeps a value as JSON text; a missing value is NULL and never the text "null". */
export function jsonColumn<Value>(name: string) {
  return customType<{ data: Value; driverData: string | null }>({
    dataType: () => "text",
    toDriver: (value) => (value === null || value === undefined ? null : JSON.stringify(value)),
    fromDriver: (value) => JSON.parse(value ?? "null"),
  })(name);
}

/** The table of a kind of record: a column for each property of its schema, then those that only queries need. */
export function tableOf(
  name: string,
  schema: TObject<TProperties>,
  queryTypes: QueryColumnTypes,
  given: Readonly<Record<string, ColumnType | undefined>>,
): RecordTable {
  const required: readonly string[] = schema.required ?? [];
  const builders: Record<string, SQLiteColumnBuilderBase> = {};
  const types = new Map<string, ColumnType>();
  for (const [field, property] of Object.entries(schema.properties)) {
    const type = given[field] ?? typeOf(property);
    types.set(field, type);
    builders[field] = builderOf(snakeCase(field), type, required.includes(field), field === "id");
  }
  for (const [field, declared] of Object.entries(queryTypes)) {
    const isRequired = typeof declared === "string";
    const type = isRequired ? declared : declared.optional;
    types.set(field, type);
    builders[field] = builderOf(snakeCase(field), type, isRequired, false);
  }
  const table = sqliteTable(name, builders);
  const all = Object.entries(getTableColumns(table));
  return {
    table,
    types,
    columns: new Map(all.filter(([field]) => field in schema.properties)),
    queryColumns: new Map(all.filter(([field]) => field in queryTypes)),
  };
}

/** `markedMaxRpm` is `marked_max_rpm`. */
export function snakeCase(name: string): string {
  return name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

function typeOf(property: TSchema): ColumnType {
  const { type, [COLUMN_KEYWORD]: kept }: { type?: unknown; [COLUMN_KEYWORD]?: ColumnType } = property;
  return kept ?? (typeof type === "string" ? BY_JSON_TYPE[type] : undefined) ?? "json";
}

function builderOf(name: string, type: ColumnType, isRequired: boolean, isId: boolean) {
  const builder = emptyBuilder(name, type);
  if (type === "row-number") return integer(name).primaryKey();
  // Given once the row is there.
  if (type === "assigned-number" || type === "derived-text") return builder;
  if (isId) return text(name).primaryKey();
  return isRequired ? builder.notNull() : builder;
}

function emptyBuilder(name: string, type: ColumnType) {
  switch (type) {
    case "text":
    case "derived-text":
      return text(name);
    case "real":
      return real(name);
    case "integer":
    case "row-number":
    case "assigned-number":
      return integer(name);
    case "boolean":
      return integer(name, { mode: "boolean" });
    case "json":
      return jsonColumn(name);
    case "bytes":
      return customType<{ data: Buffer; driverData: Buffer }>({ dataType: () => "blob" })(name);
  }
}
