/** As much of an OpenAPI 3.1 document as the methods are made from. */
export type Document = {
  readonly paths: Readonly<Record<string, PathItem>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
  readonly tags?: readonly { readonly name: string; readonly description?: string }[];
};

type PathItem = Readonly<Partial<Record<Lowercase<Method>, DocumentOperation>>>;

export type DocumentOperation = {
  readonly operationId: string;
  readonly tags: readonly string[];
  readonly summary?: string;
  readonly description?: string;
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: { readonly content: Content };
  readonly responses: Readonly<Record<string, { readonly content?: Content }>>;
};

type Content = Readonly<Record<string, { readonly schema?: Schema }>>;

type Parameter = { readonly name: string; readonly in: "path" | "query" | "header" | "cookie" };
type Schema = {
  readonly $ref?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
};

export const METHODS = ["GET", "POST", "PUT", "PATCH", "DELETE"] as const;
export type Method = (typeof METHODS)[number];

/** What a method of the client is made from. */
export type Operation = {
  readonly id: string;
  readonly tag: string;
  /** The method's name in its resource. */
  readonly verb: string;
  readonly method: Method;
  readonly path: string;
  readonly pathParameters: readonly string[];
  readonly queryParameters: readonly string[];
  readonly bodyType: string | undefined;
  /** The types a body that is a file may be of; empty if it is none. */
  readonly fileTypes: readonly string[];
  readonly isWrite: boolean;
  readonly changesVersion: boolean;
  /** The answer's plans can be asked for in parts. */
  readonly givesParts: boolean;
  /** Media types of its answer; none if it has no body. */
  readonly answerTypes: readonly string[];
  /** The answer is a stream of events, to be followed. */
  readonly isStream: boolean;
  /** The query parameter a page's `nextCursor` goes into; undefined if the answer is not a page. */
  readonly cursorParameter: string | undefined;
  /** The answer can be "not modified". */
  readonly isConditional: boolean;
  /** Name of the schema of its answer, of what a page holds, or of what a stream sends; undefined if it has none of its own. */
  readonly answerSchema: string | undefined;
  /** Name of the schema of its JSON body. */
  readonly bodySchema: string | undefined;
  readonly summary: string;
  readonly description: string | undefined;
};

/** The names under which a `nextCursor` may be sent back, the usual one first. */
const CURSOR_PARAMETERS = ["cursor", "after"];

/** Every operation of the document, in its order. Throws if one could not become a method. */
export function operationsOf(document: Document): Operation[] {
  const operations = Object.entries(document.paths).flatMap(([path, item]) =>
    METHODS.flatMap((method) => {
      const operation = item[lowercase(method)];
      return operation === undefined ? [] : [operationFrom(document, method, path, operation)];
    }),
  );
  refuseTwins(operations);
  return operations;
}

function operationFrom(
  document: Document,
  method: Method,
  path: string,
  given: DocumentOperation,
): Operation {
  const { operationId: id, parameters = [], requestBody } = given;
  const [tag, ...more] = given.tags;
  if (tag === undefined || more.length > 0) throw new Error(`${id} must have exactly one tag`);
  const named = (place: Parameter["in"]) =>
    parameters.filter((parameter) => parameter.in === place).map(({ name }) => name);
  const headers = named("header").map((name) => name.toLowerCase());
  const bodyTypes = Object.keys(requestBody?.content ?? {});
  const cursorParameter = CURSOR_PARAMETERS.find((name) => named("query").includes(name));
  return {
    id,
    tag,
    verb: verbOf(id, tag),
    method,
    path,
    pathParameters: [...path.matchAll(/\{(\w+)\}/g)].flatMap(([, name]) => name ?? []),
    queryParameters: named("query"),
    bodyType: bodyTypes[0],
    fileTypes: bodyTypes.filter((type) => !/[/+]json$/.test(type)),
    isWrite: headers.includes("idempotency-key"),
    changesVersion: headers.includes("if-match"),
    givesParts: named("query").includes("fields"),
    answerTypes: answerTypesOf(given),
    isStream: given.responses["200"]?.content?.["text/event-stream"] !== undefined,
    cursorParameter: isPaged(document, given) ? cursorParameter : undefined,
    isConditional: headers.includes("if-none-match"),
    answerSchema: answerSchemaOf(document, given),
    bodySchema: nameIn(Object.values(requestBody?.content ?? {})[0]?.schema),
    summary: given.summary ?? id,
    description: given.description,
  };
}

/** What a resource's operations are about if that is not its name without the "s". */
const NOUNS: Readonly<Record<string, string>> = { people: "person", stock: "bit", signing: "signing" };

/**
 * The name of an operation without its resource's: `createBit` of `bits` is `create`, `sendBitToSharpening` is
 * `sendToSharpening`. What one of them has is called by itself: `getBitLabel` is `label`.
 */
function verbOf(id: string, tag: string): string {
  const noun = capital(NOUNS[tag] ?? tag.replace(/s$/, ""));
  const parts = new RegExp(`^([a-z][A-Za-z]*?)(?:${noun}s?|${capital(tag)})((?:[A-Z][A-Za-z]*)?)$`).exec(id);
  const [, before = id, after = ""] = parts ?? [];
  return before === "get" && after !== "" ? after.charAt(0).toLowerCase() + after.slice(1) : before + after;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function answerTypesOf({ responses }: DocumentOperation): string[] {
  const successes = Object.entries(responses).filter(([status]) => status.startsWith("2"));
  if (successes.length === 0) return ["application/json"];
  return successes.flatMap(([, { content = {} }]) => Object.keys(content));
}

function answerSchemaOf(document: Document, given: DocumentOperation): string | undefined {
  const [success] = Object.entries(given.responses).filter(([status]) => status.startsWith("2"));
  const schema = Object.values(success?.[1].content ?? {})[0]?.schema;
  if (isPaged(document, given)) return nameIn(resolved(document, schema)?.properties?.["data"]?.items);
  // Whole or in parts: the whole stands first.
  return nameIn(resolved(document, schema)?.anyOf?.[0] ?? schema);
}

function isPaged(document: Document, { responses }: DocumentOperation): boolean {
  const schema = responses["200"]?.content?.["application/json"]?.schema;
  const { data, nextCursor } = resolved(document, schema)?.properties ?? {};
  return data !== undefined && nextCursor !== undefined;
}

function resolved(document: Document, schema: Schema | undefined): Schema | undefined {
  const name = nameIn(schema);
  return name === undefined ? schema : document.components.schemas[name];
}

function nameIn(schema: Schema | undefined): string | undefined {
  return schema?.$ref?.split("/").at(-1);
}

function refuseTwins(operations: readonly Operation[]): void {
  const seen = new Map<string, string>();
  for (const { id, tag, verb } of operations) {
    const twin = seen.get(`${tag}.${verb}`);
    if (twin !== undefined) throw new Error(`${id} and ${twin} would both be client.${tag}.${verb}`);
    seen.set(`${tag}.${verb}`, id);
  }
}

function lowercase(method: Method): Lowercase<Method> {
  const all: Readonly<Record<Method, Lowercase<Method>>> = {
    GET: "get",
    POST: "post",
    PUT: "put",
    PATCH: "patch",
    DELETE: "delete",
  };
  return all[method];
}
