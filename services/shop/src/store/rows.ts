/** A row as a record: a column that is NULL is a field that is left out. */
export type Present<Row> = {
  -readonly [Name in keyof Row as null extends Row[Name] ? never : Name]: Row[Name];
} & {
  -readonly [Name in keyof Row as null extends Row[Name] ? Name : never]?: NonNullable<Row[Name]>;
};

/** The fields of a row that hold something. */
export function present<Row extends object>(row: Row): Present<Row> {
  const fields: Partial<Record<string, unknown>> = { ...row };
  for (const name of Object.keys(fields)) if (fields[name] === null) delete fields[name];
  return fields as Present<Row>;
}
