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
  const { verb, method, path, pathParameters, bodyType, createsOnce, cursorParameter, words } = operation;
  const isList = cursorParameter !== undefined;
  const fields = [
    `method: "${method}"`,
    `path: "${path}"`,
    ...(pathParameters.length > 0 ? [`pathParameters: { ${pathParameters.join(", ")} }`] : []),
    ...(operation.hasQuery ? [isList ? "query" : "query: options?.query"] : []),
    ...(bodyType === undefined ? [] : ["body"]),
    ...(bodyType === undefined || bodyType === "application/json" ? [] : [`contentType: "${bodyType}"`]),
    ...(createsOnce ? ["createsOnce: true"] : []),
  ];
  const result = isList
    ? `caller.list<${typeOf(operation, "Response")}["data"][number]>`
    : `caller.send<${typeOf(operation, "Response")}>`;
  const options = operation.changesVersion ? "changeOptions(version)" : "options";
  const rest = [...(isList ? [`"${cursorParameter}"`] : []), options].join(", ");
  return `    /** ${words.replaceAll("*/", "* /").replaceAll(/\s*\n\s*/g, " ")} */
    ${verb}: (${parameters(operation).join(", ")}) =>
      ${result}(
        { ${fields.join(", ")} },
        ${rest},
      ),`;
}

function parameters(operation: Operation): string[] {
  const { pathParameters, bodyType, hasQuery, createsOnce, changesVersion, cursorParameter } = operation;
  const query = `${typeOf(operation, "Data")}["query"]`;
  const options = createsOnce ? "CreateOptions" : "CallOptions";
  const withQuery =
    hasQuery && cursorParameter === undefined ? `${options} & { readonly query?: ${query} }` : options;
  return [
    ...pathParameters.map((name) => `${name}: string`),
    ...(bodyType === undefined ? [] : [`body: ${typeOf(operation, "Data")}["body"]`]),
    ...(cursorParameter === undefined ? [] : [`query?: ${query}`]),
    changesVersion ? "version: Version | ChangeOptions" : `options?: ${withQuery}`,
  ];
}

function typesUsed(operation: Operation): string[] {
  const usesData = operation.bodyType !== undefined || operation.hasQuery;
  return [...(usesData ? [typeOf(operation, "Data")] : []), typeOf(operation, "Response")];
}

function coreUsed({ createsOnce, changesVersion }: Operation): string[] {
  if (changesVersion) return ["ChangeOptions", "Version"];
  return [createsOnce ? "CreateOptions" : "CallOptions"];
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
