/** An object without the fields that are undefined: as if they had not been written. */
export type Given<Fields> = {
  [Name in keyof Fields as undefined extends Fields[Name] ? never : Name]: Fields[Name];
} & {
  [Name in keyof Fields as undefined extends Fields[Name] ? Name : never]?: Exclude<Fields[Name], undefined>;
};

/** The same object without its undefined fields. */
export function withoutUndefined<Fields extends object>(fields: Fields): Given<Fields> {
  const kept = Object.entries(fields).filter(([, value]) => value !== undefined);
  // The type says exactly what the filter does.
  return Object.fromEntries(kept) as Given<Fields>;
}
