/** What is read of a JSON Schema to say what it accepts. */
export type SchemaWords = {
  readonly type?: string;
  readonly $id?: string;
  readonly $ref?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly pattern?: string;
  readonly format?: string;
  readonly description?: string;
  readonly anyOf?: readonly SchemaWords[];
  readonly discriminator?: { readonly propertyName: string };
  readonly properties?: Readonly<Record<string, SchemaWords>>;
};

/** One phrase that says which values a schema accepts, such as "a number from 1 to 80". */
export function acceptedBy(schema: SchemaWords): string {
  if (schema.const !== undefined) return String(schema.const);
  if (schema.enum !== undefined) return `one of: ${schema.enum.join(", ")}`;
  if (schema.anyOf !== undefined) return schema.anyOf.map(acceptedBy).join(", or ");
  switch (schema.type) {
    case "number":
      return `a number${span(schema.minimum, schema.maximum)}`;
    case "integer":
      return `a whole number${span(schema.minimum, schema.maximum)}`;
    case "string":
      return textAccepted(schema);
    case "array":
      return `a list${span(schema.minItems, schema.maxItems)}${schema.maxItems === undefined ? "" : " items"}`;
    case "boolean":
      return "true or false";
    case "null":
      return "null to remove it";
    default:
      return objectAccepted(schema);
  }
}

/** What a format accepts, with an example. */
const FORMATS: Readonly<Record<string, string>> = {
  "date-time": "a date and time with its offset, such as 2026-03-02T08:00:00Z, from 1970 to 2999",
  date: "a date, such as 2026-03-02, from 1970 to 2999",
};

function textAccepted({ pattern, format, description, minLength, maxLength }: SchemaWords): string {
  const ofFormat = FORMATS[format ?? ""];
  if (ofFormat !== undefined) return ofFormat;
  // A pattern or a format is for machines; its description says the same to people.
  if ((pattern ?? format) !== undefined && description !== undefined) return description;
  return `text${span(minLength, maxLength)}${maxLength === undefined ? "" : " characters long"}`;
}

function objectAccepted({ properties, discriminator, $ref }: SchemaWords): string {
  if (discriminator !== undefined) return `an object with "${discriminator.propertyName}" and its fields`;
  if (properties !== undefined) return `an object with ${Object.keys(properties).join(", ")}`;
  return $ref === undefined ? "an object" : `an object of the form ${$ref.replace(/#$/, "")}`;
}

function span(min: number | undefined, max: number | undefined): string {
  if (min !== undefined && max !== undefined) return ` from ${min} to ${max}`;
  if (min !== undefined) return ` of at least ${min}`;
  return max === undefined ? "" : ` of at most ${max}`;
}
