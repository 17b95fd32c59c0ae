import type { Operation } from "./document.ts";

const BANNER = "// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.\n";

/** The text of each generated file of methods, by its name: one a resource, and the list of them. */
export function resourceFiles(operations: readonly Operation[]): Map<string, string> {
  const tags = [...new Set(operations.map(({ tag }) => tag))].sort();
  const files = tags.map((tag): [string, string] => [
    `${fileOf(tag)}.ts`,
    resourceText(
      tag,
      operations.filter((operation) => operation.tag === tag),
    ),
  ]);
  return new Map([...files, ["resources.ts", listText(tags)]]);
}

function resourceText(tag: string, operations: readonly Operation[]): string {
  const types = operations.flatMap((operation) => typesUsed(operation)).sort();
  const core = operations.flatMap((operation) => coreUsed(operation));
  const coreTypes = [...new Set(["Caller", ...core])].sort().map((name) => `type ${name}`);
  const coreValues = operations.some(({ changesVersion }) => changesVersion) ? ["changeOptions"] : [];
  const coreImport =
    coreValues.length === 0
      ? `import type { ${coreTypes.map((name) => name.slice("type ".length)).join(", ")} } from "../operation.ts";`
      : `import { ${[...coreValues, ...coreTypes].join(", ")} } from "../operation.ts";`;
  return `${BANNER}
${coreImport}
import type {
${types.map((name) => `  ${name},\n`).join("")}} from "./types.gen.ts";

export function ${propertyOf(tag)}Of(caller: Caller) {
  return {
${operations.map((operation) => methodText(operation)).join("\n\n")}
  };
}
`;
}

function listText(tags: readonly string[]): string {
  return `${BANNER}
import type { Caller } from "../operation.ts";
${tags.map((tag) => `import { ${propertyOf(tag)}Of } from "./${fileOf(tag)}.ts";\n`).join("")}
export function resourcesOf(caller: Caller) {
  return {
${tags.map((tag) => `    ${propertyOf(tag)}: ${propertyOf(tag)}Of(caller),\n`).join("")}  };
}
`;
}

function methodText(operation: Operation): string {
  const { verb, method, path, pathParameters, isWrite, words } = operation;
  const fields = [
    `method: "${method}"`,
    `path: "${path}"`,
    ...(pathParameters.length > 0 ? [`pathParameters: { ${pathParameters.join(", ")} }`] : []),
    ...queryField(operation),
    ...bodyFields(operation),
    ...(isWrite ? ["isWrite: true"] : []),
    ...answersField(operation),
  ];
  const { cursorParameter } = operation;
  const options = operation.changesVersion ? "changeOptions(version)" : "options";
  const rest = [...(cursorParameter === undefined ? [] : [`"${cursorParameter}"`]), options].join(", ");
  return `    /** ${words.replaceAll("*/", "* /").replaceAll(/\s*\n\s*/g, " ")} */
    ${verb}: (${parameters(operation).join(", ")}) =>
      ${callText(operation)}(
        { ${fields.join(", ")} },
        ${rest},
      ),`;
}

/** What is JSON, or followed as a stream, need not say so. */
function answersField({ answerTypes, isStream }: Operation): string[] {
  if (isStream || answerTypes.join() === "application/json") return [];
  return [`answers: [${answerTypes.map((type) => `"${type}"`).join(", ")}]`];
}

/** A file says itself what type it is of. */
function bodyFields({ bodyType, fileTypes }: Operation): string[] {
  if (bodyType === undefined) return [];
  if (fileTypes.length > 0) return ["...file"];
  return bodyType === "application/json" ? ["body"] : ["body", `contentType: "${bodyType}"`];
}

function callText(operation: Operation): string {
  const response = typeOf(operation, "Response");
  if (operation.isStream) return `caller.follow<${response}>`;
  return operation.cursorParameter === undefined
    ? `caller.send<${response}>`
    : `caller.list<${response}["data"][number]>`;
}

/** A list takes its query by itself; whoever follows gives it among the options, as it is said once and for all. */
function queryField({ queryParameters, cursorParameter, isStream }: Operation): string[] {
  if (queryParameters.length === 0) return [];
  if (cursorParameter !== undefined) return ["query"];
  if (!isStream) return ["query: options?.query"];
  return [`query: { ${queryParameters.map((name) => `${name}: options?.${name}`).join(", ")} }`];
}

function parameters(operation: Operation): string[] {
  const { pathParameters, changesVersion, cursorParameter } = operation;
  const query = `${typeOf(operation, "Data")}["query"]`;
  return [
    ...pathParameters.map((name) => `${name}: string`),
    ...bodyParameter(operation),
    ...(cursorParameter === undefined ? [] : [`query?: ${query}`]),
    changesVersion ? "version: Version | ChangeOptions" : `options?: ${optionsText(operation, query)}`,
  ];
}

function bodyParameter(operation: Operation): string[] {
  const { bodyType, fileTypes } = operation;
  if (bodyType === undefined) return [];
  return fileTypes.length === 0
    ? [`body: ${typeOf(operation, "Data")}["body"]`]
    : [`file: FileBody<${fileTypes.map((type) => `"${type}"`).join(" | ")}>`];
}

function optionsText(operation: Operation, query: string): string {
  const { queryParameters, cursorParameter, isStream } = operation;
  const options = optionsType(operation);
  if (queryParameters.length === 0 || cursorParameter !== undefined) return options;
  return isStream ? `${options} & ${query}` : `${options} & { readonly query?: ${query} }`;
}

function optionsType({ isWrite }: Operation): string {
  return isWrite ? "WriteOptions" : "CallOptions";
}

function typesUsed(operation: Operation): string[] {
  const takesJson = operation.bodyType !== undefined && operation.fileTypes.length === 0;
  const usesData = takesJson || operation.queryParameters.length > 0;
  return [...(usesData ? [typeOf(operation, "Data")] : []), typeOf(operation, "Response")];
}

function coreUsed(operation: Operation): string[] {
  const file = operation.fileTypes.length > 0 ? ["FileBody"] : [];
  return [...file, ...(operation.changesVersion ? ["ChangeOptions", "Version"] : [optionsType(operation)])];
}

function typeOf({ id }: Operation, part: "Data" | "Response"): string {
  return `${id.charAt(0).toUpperCase()}${id.slice(1)}${part}`;
}

/** `bit-forms` as a property: `bitForms`. */
function propertyOf(tag: string): string {
  return tag.replace(/-(\w)/g, (_match, letter: string) => letter.toUpperCase());
}

function fileOf(tag: string): string {
  return tag.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
