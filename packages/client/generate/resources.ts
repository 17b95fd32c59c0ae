import type { Document, Operation } from "./document.ts";
import { CORE_FILES, namesIn, signaturesOf, takesEither } from "./signatures.ts";

const BANNER = "// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.\n";

/** The text of each generated file of methods, by its name: one a resource, and the list of them. */
export function resourceFiles(
  operations: readonly Operation[],
  tags: Document["tags"] = [],
): Map<string, string> {
  const names = [...new Set(operations.map(({ tag }) => tag))].sort();
  const documented = new Map(tags.map(({ name, description }) => [name, description]));
  const resources = names.map((tag) => ({ tag, words: documented.get(tag) ?? tag }));
  const files = resources.map((resource): [string, string] => [
    `${fileOf(resource.tag)}.ts`,
    resourceText(
      resource,
      operations.filter(({ tag }) => tag === resource.tag),
    ),
  ]);
  return new Map([...files, ["resources.ts", listText(resources)]]);
}

/**
 * The text of the door to the generated types: the schemas that the document names and the resources, and none of what is made for
 * each operation.
 */
export function modelsText({ components }: Document, operations: readonly Operation[]): string {
  const names = Object.keys(components.schemas).sort();
  const tags = [...new Set(operations.map(({ tag }) => tag))].sort();
  return `${BANNER}
export type {
${names.map((name) => `  ${name},\n`).join("")}} from "./types.gen.ts";
export type { Resources } from "./resources.ts";
${tags.map((tag) => `export type { ${interfaceOf(tag)} } from "./${fileOf(tag)}.ts";\n`).join("")}`;
}

type Resource = { readonly tag: string; readonly words: string };

function resourceText({ tag, words }: Resource, operations: readonly Operation[]): string {
  const { core, types } = namesIn(operations);
  const usesOverloads = operations.some((operation) => signaturesOf(operation).length > 1);
  const changes = operations.some(({ changesVersion }) => changesVersion);
  const asksByOverloads = operations.some(
    (operation) => signaturesOf(operation).length > 1 && operation.queryParameters.length > 0,
  );
  const fromOperation = [
    ...["Caller", ...(usesOverloads ? ["AnyOptions"] : []), ...(asksByOverloads ? ["Query"] : [])],
    ...named(core, "operation"),
  ];
  const values = [
    ...(operations.some(takesEither) ? ["bodyOrFile"] : []),
    ...(changes ? ["changeOptions"] : []),
  ];
  const hasValues = values.length > 0;
  const typesOnly = fromOperation.sort().map((name) => (hasValues ? `type ${name}` : name));
  const imports = [
    ...["answer"].flatMap((file) => typeImport(core, file)),
    `import ${hasValues ? "" : "type "}{ ${[...values, ...typesOnly].join(", ")} } from "../operation.ts";`,
    ...["pages", "parts", "read"].flatMap((file) => typeImport(core, file)),
    ...(types.length === 0 ? [] : [`import type { ${types.join(", ")} } from "./types.gen.ts";`]),
  ];
  return `${BANNER}
${imports.join("\n")}

${comment([words], "")}
export interface ${interfaceOf(tag)} {
${operations.map((operation) => declaration(operation)).join("\n\n")}
}

export function ${propertyOf(tag)}Of(caller: Caller): ${interfaceOf(tag)} {
  return {
${operations.map((operation) => methodText(operation)).join("\n")}
  };
}
`;
}

function listText(resources: readonly Resource[]): string {
  const imports = resources.map(
    ({ tag }) => `import { type ${interfaceOf(tag)}, ${propertyOf(tag)}Of } from "./${fileOf(tag)}.ts";\n`,
  );
  const properties = resources.map(
    ({ tag, words }) => `${comment([words], "  ")}\n  readonly ${propertyOf(tag)}: ${interfaceOf(tag)};\n`,
  );
  return `${BANNER}
import type { Caller } from "../operation.ts";
${imports.join("")}
/** What the service keeps and computes, a resource each. */
export interface Resources {
${properties.join("\n")}}

export function resourcesOf(caller: Caller): Resources {
  return {
${resources.map(({ tag }) => `    ${propertyOf(tag)}: ${propertyOf(tag)}Of(caller),\n`).join("")}  };
}
`;
}

function declaration(operation: Operation): string {
  const { verb, method, path, summary, description } = operation;
  const words = [summary, ...(description === undefined ? [] : [description]), `\`${method} ${path}\``];
  return signaturesOf(operation)
    .map(
      ({ parameters, answer, variable }) =>
        `${comment(words, "  ")}\n  ${verb}${variable === undefined ? "" : `<${variable}>`}(${parameters.join(", ")}): ${answer};`,
    )
    .join("\n");
}

function comment(paragraphs: readonly string[], indent: string): string {
  const lines = paragraphs.map((words) => words.replaceAll("*/", "* /").replaceAll(/\s*\n\s*/g, " "));
  if (lines.length === 1) return `${indent}/** ${lines[0]} */`;
  return `${indent}/**\n${lines.map((line) => `${indent} * ${line}\n`).join(`${indent} *\n`)}${indent} */`;
}

function methodText(operation: Operation): string {
  const { verb, method, path, pathParameters, isWrite, cursorParameter, changesVersion } = operation;
  const fields = [
    ...(method === "GET" ? [] : [`method: "${method}"`]),
    `path: "${path.replaceAll(/\{\w+\}/g, "{}")}"`,
    ...(pathParameters.length > 0 ? [`ids: [${pathParameters.join(", ")}]`] : []),
    ...queryField(operation),
    ...bodyFields(operation),
    ...(isWrite || method === "GET" ? [] : ["isQuestion: true"]),
    ...answersField(operation),
  ];
  const options = changesVersion ? "changeOptions(version)" : "options";
  const given = [
    `{ ${fields.join(", ")} }`,
    options,
    ...(cursorParameter === undefined || cursorParameter === "cursor" ? [] : [`"${cursorParameter}"`]),
  ];
  return `    ${verb}: (${implemented(operation)}) =>\n      ${callText(operation)}(${given.join(", ")}),`;
}

/** The parameters by name: the interface says their types, but for a method that has several signatures. */
function implemented(operation: Operation): string {
  const [first, ...others] = signaturesOf(operation);
  const parameters = first?.parameters ?? [];
  if (others.length === 0) return parameters.map((each) => /^\w+/.exec(each)?.[0]).join(", ");
  const query = operation.queryParameters.length === 0 ? "" : " & { readonly query?: Query | undefined }";
  const options = `options?: AnyOptions${query}`;
  return [...parameters.slice(0, -1), options].join(", ");
}

/** What is JSON, or followed as a stream, need not say so. */
function answersField(operation: Operation): string[] {
  const { answerTypes, isStream } = operation;
  if (isStream || answerTypes.join() === "application/json") return [];
  return [`answers: [${answerTypes.map((type) => `"${type}"`).join(", ")}]`];
}

/** A file says itself what type it is of. */
function bodyFields(operation: Operation): string[] {
  const { bodyType, fileTypes } = operation;
  if (bodyType === undefined) return [];
  if (takesEither(operation)) return ["...bodyOrFile(body)"];
  if (fileTypes.length > 0) return ["...file"];
  return bodyType === "application/json" ? ["body"] : ["body", `contentType: "${bodyType}"`];
}

/** What gives one thing or another is no less than each: `never` stands for all of them. */
function callText(operation: Operation): string {
  if (operation.isStream) return "caller.follow";
  if (operation.cursorParameter !== undefined) return "caller.list";
  return signaturesOf(operation).length > 1 ? "caller.send<never>" : "caller.send";
}

/** A list takes its query by itself; whoever follows gives it among the options, as it is said once and for all. */
function queryField({ queryParameters, cursorParameter, isStream }: Operation): string[] {
  if (queryParameters.length === 0) return [];
  if (cursorParameter !== undefined) return ["query"];
  // The core finds it among the options.
  if (!isStream) return [];
  return [`query: { ${queryParameters.map((name) => `${name}: options?.${name}`).join(", ")} }`];
}

function typeImport(core: readonly string[], file: string): string[] {
  const names = named(core, file);
  return names.length === 0 ? [] : [`import type { ${names.join(", ")} } from "../${file}.ts";`];
}

function named(core: readonly string[], file: string): string[] {
  return core.filter((name) => CORE_FILES[name] === file);
}

/** `runOuts` as the name of an interface: `RunOutsResource`. */
function interfaceOf(tag: string): string {
  const property = propertyOf(tag);
  return `${property.charAt(0).toUpperCase()}${property.slice(1)}Resource`;
}

/** `bit-forms` as a property: `bitForms`. */
function propertyOf(tag: string): string {
  return tag.replace(/-(\w)/g, (_match, letter: string) => letter.toUpperCase());
}

function fileOf(tag: string): string {
  return tag.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
