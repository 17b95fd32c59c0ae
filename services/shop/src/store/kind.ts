import type { SQLiteColumn, SQLiteTable } from "drizzle-orm/sqlite-core";
import type { Static, TObject, TProperties } from "typebox";
import { type ColumnType, type QueryColumnTypes, tableOf } from "./columns.ts";

/** What every kept record has. */
export type Kept = {
  readonly id: string;
  /** 1 when created, one more with each change. */
  readonly version: number;
  readonly createdAt: string;
  readonly updatedAt: string;
};

/** The section of the API description that a kind's operations are listed under, and the client's resource. */
export type Tag = { readonly name: string; readonly description: string };

type Declared<Type extends string, Schema extends TObject<TProperties>> = {
  /** Stable name of the kind: the first part of its events' types. */
  readonly type: Type;
  /** As a person calls one of them. */
  readonly noun: string;
  /** First part of every id: `bit` in `bit_0192…`. */
  readonly idPrefix: string;
  /** Path of the collection; undefined when no request names these records. */
  readonly path?: string;
  readonly tag?: Tag;
  /** Everything that is kept of a record. */
  readonly schema: Schema;
  /** What events may say of a record. Default: the fields of its schema. */
  readonly shown?: TObject<TProperties>;
  /** Name of its table. Its columns follow from the schema. */
  readonly table: string;
  /** Columns that are computed for queries and are no part of the record: `Shape.computed` says how. */
  readonly queryColumns?: QueryColumnTypes;
  /**
   * Fields that are kept in the record alone: what says who a person is or is noted of them, where it can be erased, and secrets. Events
   * hold a digest of them, salted with the record's `salt`, if it has one.
   */
  readonly privateFields?: readonly (keyof Static<Schema> & string)[];
  /** Fields whose column is of another type than their schema says. */
  readonly columnTypes?: { readonly [Name in keyof Static<Schema>]?: ColumnType };
};

/** A kind of record, declared once: everything that the service knows of all kinds alike follows from it. */
export type Kind<
  Type extends string = string,
  Schema extends TObject<TProperties> = TObject<TProperties>,
> = Pick<
  Declared<Type, Schema>,
  "type" | "noun" | "idPrefix" | "path" | "tag" | "schema" | "shown" | "queryColumns"
> & {
  readonly privateFields: readonly string[];
  readonly table: SQLiteTable;
  readonly tableName: string;
  /** The columns of the record's own fields, in the schema's order. */
  readonly columns: ReadonlyMap<string, SQLiteColumn>;
  /** How each field, and each query column, is kept. */
  readonly types: ReadonlyMap<string, ColumnType>;
  /** A column by its field, or by its name among the query columns. */
  readonly column: (name: (keyof Static<Schema> & string) | (string & {})) => SQLiteColumn;
};

/** The record of a kind. */
export type RecordOf<K extends Kind> = Static<K["schema"]> & Kept;

/** Declares a kind of record. */
export function defineKind<const Type extends string, Schema extends TObject<TProperties>>(
  declared: Declared<Type, Schema>,
): Kind<Type, Schema> {
  const { table: tableName, columnTypes = {}, privateFields = [], ...rest } = declared;
  const { table, columns, queryColumns, types } = tableOf(
    tableName,
    declared.schema,
    declared.queryColumns ?? {},
    columnTypes,
  );
  return {
    ...rest,
    privateFields,
    tableName,
    table,
    columns,
    types,
    column: (name) => {
      const column = columns.get(name) ?? queryColumns.get(name);
      if (column === undefined) throw new Error(`${declared.type} has no column for ${name}`);
      return column;
    },
  };
}
