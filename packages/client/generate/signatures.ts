import { isBytes } from "../src/bytes.ts";
import type { Operation } from "./document.ts";

/** A method as the interface of its resource declares it: one signature, or one for each thing it can give. */
export type Signature = {
  readonly parameters: readonly string[];
  readonly answer: string;
  /** What its types depend on. */
  readonly variable?: string;
};

/** The signatures of an operation's method, the one that asks for most first. */
export function signaturesOf(operation: Operation): Signature[] {
  const { cursorParameter, isStream, isConditional, givesParts } = operation;
  const answer = answerType(operation);
  const required = requiredParameters(operation);
  if (cursorParameter !== undefined) {
    const parameters = [...required, `query?: ${queryType(operation)}`, "options?: CallOptions"];
    return [{ parameters, answer: `Pages<${answer}>` }];
  }
  if (operation.changesVersion) {
    return [
      { parameters: [...required, "version: RecordVersion | ChangeOptions"], answer: `Answer<${answer}>` },
    ];
  }
  const options = optionsType(operation);
  const plain = {
    parameters: [...required, `options?: ${options}`],
    answer: isStream ? `AsyncIterable<${answer}>` : `Answer<${answer}>`,
  };
  const parts = {
    parameters: [...required, `options: ${optionsWith(operation, `Asking<${rawQuery(operation)}, Field>`)}`],
    answer: `Answer<PartsOf<${answer}, Field>>`,
    variable: `const Field extends FieldOf<${rawQuery(operation)}>`,
  };
  const conditional = {
    parameters: [...required, `options: ${options.replace("CallOptions", "ConditionalOptions")}`],
    answer: `Answer<${answer} | NotModified>`,
  };
  const streamed = {
    parameters: [...required, `options: ${options} & StreamOptions`],
    answer: "Answer<ReadableStream<Uint8Array>>",
  };
  return [
    ...(givesParts ? [parts] : []),
    ...(isConditional ? [conditional] : []),
    ...(isFile(operation) ? [streamed] : []),
    plain,
  ];
}

/** Whether the answer is no JSON: a file, a label. */
export function isFile({ answerTypes, isStream }: Operation): boolean {
  return !isStream && answerTypes.length > 0 && !answerTypes.some((type) => /[/+]json$/.test(type));
}

/** The names that signatures take from the core, and those they take from the schemas. */
export function namesIn(operations: readonly Operation[]): { core: string[]; types: string[] } {
  const signatures = operations.flatMap((operation) => signaturesOf(operation));
  const text = signatures
    .flatMap(({ parameters, answer, variable = "" }) => [...parameters, answer, variable])
    .join(" ");
  const named = (names: readonly string[]) => names.filter((name) => new RegExp(`\\b${name}\\b`).test(text));
  const schemas = operations.flatMap((operation) => [
    operation.answerSchema ?? typeOf(operation, "Response"),
    operation.bodySchema ?? typeOf(operation, "Data"),
    typeOf(operation, "Data"),
  ]);
  return { core: named(CORE), types: named([...new Set(schemas)].sort()) };
}

/** What a signature may name of the core, and the file that holds it. */
export const CORE_FILES: Readonly<Record<string, string>> = {
  Answer: "answer",
  Asking: "parts",
  CallOptions: "operation",
  ChangeOptions: "operation",
  ConditionalOptions: "operation",
  FieldOf: "parts",
  FileBody: "operation",
  Loose: "operation",
  NotModified: "read",
  Pages: "pages",
  PartsOf: "parts",
  StreamOptions: "operation",
  RecordVersion: "operation",
  Whole: "parts",
  WriteOptions: "operation",
};
const CORE = Object.keys(CORE_FILES);

function answerType(operation: Operation): string {
  if (isFile(operation)) return operation.answerTypes.some(isBytes) ? "Blob" : "string";
  if (operation.answerTypes.length === 0) return "void";
  const response = typeOf(operation, "Response");
  const whole = operation.cursorParameter === undefined ? response : `${response}["data"][number]`;
  return operation.answerSchema ?? whole;
}

function requiredParameters(operation: Operation): string[] {
  const { pathParameters, bodyType, fileTypes } = operation;
  const inPath = pathParameters.map((name) => `${name}: string`);
  if (bodyType === undefined) return inPath;
  const file = `FileBody<${fileTypes.map((type) => `"${type}"`).join(" | ")}>`;
  const body = operation.bodySchema ?? `${typeOf(operation, "Data")}["body"]`;
  if (fileTypes.length === 0) return [...inPath, `body: ${body}`];
  return [...inPath, takesEither(operation) ? `body: ${body} | ${file}` : `file: ${file}`];
}

/** Whether a body may be JSON or a file. */
export function takesEither({ bodyType, fileTypes }: Operation): boolean {
  return fileTypes.length > 0 && bodyType === "application/json";
}

function optionsType(operation: Operation): string {
  const { queryParameters, isStream, isWrite } = operation;
  const options = isWrite ? "WriteOptions" : "CallOptions";
  if (queryParameters.length === 0) return options;
  const query = queryType(operation);
  return isStream ? `${options} & ${query}` : `${options} & { readonly query?: ${query} | undefined }`;
}

function optionsWith({ isWrite }: Operation, query: string): string {
  return `${isWrite ? "WriteOptions" : "CallOptions"} & { readonly query: ${query} }`;
}

/** The query of an operation as it is given; of plans, as it asks for whole ones. */
export function queryType(operation: Operation): string {
  return `${operation.givesParts ? "Whole" : "Loose"}<${rawQuery(operation)}>`;
}

function rawQuery(operation: Operation): string {
  return `NonNullable<${typeOf(operation, "Data")}["query"]>`;
}

function typeOf({ id }: Operation, part: "Data" | "Response"): string {
  return `${id.charAt(0).toUpperCase()}${id.slice(1)}${part}`;
}
