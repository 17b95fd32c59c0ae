import Type, { type TObject, type TProperties, type TSchema, type TUnsafe } from "typebox";

/** At least one character that can be seen. */
const HAS_TEXT = "\\S";

/** What every record shows of itself. */
export const keptFields = {
  createdAt: Type.String({ format: "date-time", description: "When it was created, UTC." }),
  updatedAt: Type.String({ format: "date-time", description: "When it last changed, UTC." }),
  version: Type.Integer({
    minimum: 1,
    description: "1 when created, one more with each change; also its ETag.",
  }),
};

/** The id field of a record. */
export function idField(prefix: string) {
  return Type.String({ description: `Its id, \`${prefix}_…\`; sorts by time of creation.` });
}

/** The name a person gives to a record. */
export function nameField(example: string) {
  return Type.String({
    minLength: 1,
    maxLength: 100,
    pattern: HAS_TEXT,
    description: `text of 1 to 100 characters, such as "${example}"`,
  });
}

/** Remarks for people. */
export const notesField = Type.String({ maxLength: 2000, description: "Remarks for people." });

/** What another program calls a record, so that it can tie its own to it. Not unique: two programs may use the same one. */
export const externalIdField = Type.String({
  minLength: 1,
  maxLength: 100,
  description: "What another program calls it.",
});

/** A figure of a computed answer that there may be none of. */
export function orNull<Schema extends TSchema>(schema: Schema, description: string) {
  return Type.Union([schema, Type.Null()], { description });
}

/** The id of another record. */
export function referenceField(what: string) {
  return Type.String({ minLength: 1, maxLength: 100, description: `Id of ${what}.` });
}

/** A moment in time that a person or a program gives. */
export function momentField(description: string) {
  return Type.String({ format: "date-time", maxLength: 40, description: `${description} RFC 3339.` });
}

type OptionalNames<Fields> = {
  [Name in keyof Fields]-?: Record<never, never> extends Pick<Fields, Name> ? Name : never;
}[keyof Fields];

/** The fields to change: null removes one that is optional. */
export type PatchOf<Fields> = {
  readonly [Name in Exclude<keyof Fields, OptionalNames<Fields>>]?: Exclude<Fields[Name], undefined>;
} & {
  readonly [Name in OptionalNames<Fields>]?: Exclude<Fields[Name], undefined> | null;
};

/**
 * The schema of a change to what `fields` describes: a given field replaces the old one whole, null removes one that
 * is optional, and what is not given stays (RFC 7396 on the top level).
 */
export function patchSchema<Fields>(
  $id: string,
  { properties, required }: TObject<TProperties>,
  description: string,
): TUnsafe<PatchOf<Fields>> {
  const needed: readonly string[] = required ?? [];
  const changes = Object.entries(properties).map(([name, schema]) => [
    name,
    needed.includes(name) ? schema : { anyOf: [{ ...schema }, { type: "null" }] },
  ]);
  return Type.Unsafe<PatchOf<Fields>>({
    $id,
    description,
    type: "object",
    properties: Object.fromEntries(changes),
    additionalProperties: false,
    minProperties: 1,
  });
}

/** What is left of a record after a change to its top level. */
export function merged<Fields extends object>(fields: Fields, patch: PatchOf<Fields>): Fields {
  const result = new Map<string, unknown>(Object.entries(fields));
  for (const [name, value] of Object.entries(patch)) {
    if (value === null) result.delete(name);
    else result.set(name, value);
  }
  // The schema of the change lets null only remove what `Fields` may be without.
  return Object.fromEntries(result) as Fields;
}
