import { Column, is, type SQL } from "drizzle-orm";
import type { SQLiteColumn } from "drizzle-orm/sqlite-core";
import type { Kind, RecordOf } from "./kind.ts";

/** A row as a driver gives it: values in the order of the columns. */
export type RawRow = readonly unknown[];

/** A selected column or expression, by the field it becomes. */
export type Selection = { readonly [field: string]: SQLiteColumn | SQL<unknown> };

type Selected<Column_> =
  Column_ extends SQL<infer Data>
    ? Data
    : Column_ extends SQLiteColumn<infer Config>
      ? Config["notNull"] extends true
        ? Config["data"]
        : Config["data"] | null
      : never;

/** A row of a selection. A field without a value is null. */
export type SelectedRow<Chosen extends Selection> = {
  readonly [Field in keyof Chosen]: Selected<Chosen[Field]>;
};

type ReadField = {
  readonly field: string;
  readonly index: number;
  /** Undefined when the driver's value is the field's already. */
  readonly decode: ((value: unknown) => unknown) | undefined;
  readonly isRequired: boolean;
};

type Decoders = readonly ((value: unknown) => unknown)[];

/** Fields are written as members of an object literal: only names like these, never text from outside. */
const FIELD_NAME = /^[A-Za-z]\w*$/;

/**
 * Makes records of a kind of the rows that `recordQuery` selects. A column that is NULL is a field that is absent. This is
 * where what a database holds becomes a type: only the one door writes there, and only records of the kind.
 */
export function recordReader<K extends Kind>(kind: K): (row: RawRow) => RecordOf<K> {
  return compiled(fieldsOf(kind, [...kind.columns.keys()]));
}

/** The same for some fields of a record. */
export function fieldsReader<K extends Kind, Field extends keyof RecordOf<K>>(
  kind: K,
  fields: readonly (Field & string)[],
): (row: RawRow) => Pick<RecordOf<K>, Field> {
  return compiled(fieldsOf(kind, fields));
}

/** Makes objects of the rows of a selection; what is NULL stays null. */
export function rowReader<Chosen extends Selection>(chosen: Chosen): (row: RawRow) => SelectedRow<Chosen> {
  const fields = Object.entries(chosen).map(([field, column], index) => ({
    field,
    index,
    decode: decoderOf(column),
    isRequired: true,
  }));
  return compiled(fields);
}

function fieldsOf(kind: Kind, names: readonly string[]): ReadField[] {
  const required: readonly string[] = kind.schema.required ?? [];
  return names.map((field, index) => ({
    field,
    index,
    decode: decoderOf(kind.column(field)),
    isRequired: required.includes(field),
  }));
}

/** Undefined when the driver's value is the field's already. */
function decoderOf(column: Column | SQL<unknown>): ((value: unknown) => unknown) | undefined {
  if (!is(column, Column) || column.mapFromDriverValue === Column.prototype.mapFromDriverValue)
    return undefined;
  return (value) => (value === null ? null : column.mapFromDriverValue(value));
}

/**
 * A reader written for exactly these fields: the engine makes one hidden class for all their objects, which a loop over names
 * does not get. Measured: half the time of a generic one for a page of bits.
 */
function compiled<Row>(fields: readonly ReadField[]): (row: RawRow) => Row {
  for (const { field } of fields) if (!FIELD_NAME.test(field)) throw new Error(`${field} is no field's name`);
  const decoders: Decoders = fields.map(({ decode }) => decode ?? ((value) => value));
  const source = ({ index, decode }: ReadField) =>
    decode === undefined ? `row[${index}]` : `decoders[${index}](row[${index}])`;
  const always = fields.filter(({ isRequired }) => isRequired);
  const sometimes = fields.filter(({ isRequired }) => !isRequired);
  const body = [
    `const record = {${always.map((each) => `${each.field}: ${source(each)}`).join(", ")}};`,
    ...sometimes.map((each) => `if (row[${each.index}] !== null) record.${each.field} = ${source(each)};`),
    "return record;",
  ].join("\n");
  return new Function("decoders", `return (row) => {\n${body}\n};`)(decoders);
}
