import { readFileSync } from "node:fs";

/** The part of a JSON schema that the checks of request schemas look at. */
export type Schema = {
  readonly $ref?: string;
  readonly type?: string;
  readonly format?: string;
  readonly pattern?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly maxLength?: number;
  readonly maxItems?: number;
  readonly maximum?: number;
  readonly exclusiveMaximum?: number;
  readonly additionalProperties?: unknown;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
};

/** A schema with the way to it, such as `createBit/form/diameterMm`. */
export type Found = { readonly at: string; readonly schema: Schema };

type Parameter = { readonly name: string; readonly in: string; readonly schema: Schema };
type Documented = {
  readonly operationId: string;
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
  readonly responses: Readonly<
    Record<string, { readonly content?: Readonly<Record<string, { readonly schema: Schema }>> }>
  >;
};

const written: {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Documented>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
} = JSON.parse(readFileSync(new URL("../../openapi/openapi.json", import.meta.url), "utf8"));

const operations = Object.values(written.paths).flatMap((methods) => Object.values(methods));

/** A schema, or the component that it refers to. */
export function resolved(schema: Schema): Schema {
  const { $ref } = schema;
  return $ref === undefined ? schema : (written.components.schemas[$ref.split("/").at(-1) ?? ""] ?? {});
}

/** Every schema that a request's JSON body may be made of, to any depth, each component once. */
export function bodySchemas(): Found[] {
  const seen = new Set<string>();
  return operations.flatMap(({ operationId, requestBody }) => {
    const schema = requestBody?.content["application/json"]?.schema;
    return schema === undefined ? [] : within({ at: operationId, schema }, seen);
  });
}

/** The schema of every query and path parameter. */
export function parameterSchemas(): (Found & { readonly name: string })[] {
  return operations.flatMap(({ operationId, parameters = [] }) =>
    parameters
      .filter((each) => each.in !== "header")
      .map(({ name, schema }) => ({ at: `${operationId}?${name}`, name, schema })),
  );
}

/** The fields that an operation's own answer shows and its body does not take. */
export function readOnlyFields(operationId: string): string[] {
  const operation = operations.find((each) => each.operationId === operationId);
  const taken = fieldsOf(operation?.requestBody?.content["application/json"]?.schema);
  const success = Object.entries(operation?.responses ?? {}).find(([status]) => status.startsWith("2"));
  const shown = fieldsOf(success?.[1].content?.["application/json"]?.schema);
  return shown.filter((name) => !taken.includes(name));
}

/** The name of every field that any answer may show. */
export function answeredFields(): string[] {
  const seen = new Set<string>();
  const found = operations.flatMap(({ operationId, responses }) =>
    Object.values(responses).flatMap(({ content = {} }) =>
      Object.values(content).flatMap(({ schema }) => within({ at: operationId, schema }, seen)),
    ),
  );
  return [...new Set(found.flatMap(({ schema }) => Object.keys(schema.properties ?? {})))];
}

/** The names of an object's fields. */
export function fieldsOf(schema: Schema | undefined): string[] {
  return schema === undefined ? [] : Object.keys(resolved(schema).properties ?? {});
}

function within({ at, schema }: Found, seen: Set<string>): Found[] {
  if (schema.$ref !== undefined) {
    if (seen.has(schema.$ref)) return [];
    seen.add(schema.$ref);
    return within({ at, schema: resolved(schema) }, seen);
  }
  const { properties = {}, items, anyOf = [], oneOf = [] } = schema;
  return [
    { at, schema },
    ...Object.entries(properties).flatMap(([name, each]) =>
      within({ at: `${at}/${name}`, schema: each }, seen),
    ),
    ...(items === undefined ? [] : within({ at: `${at}/*`, schema: items }, seen)),
    ...[...anyOf, ...oneOf].flatMap((each) => within({ at, schema: each }, seen)),
  ];
}
