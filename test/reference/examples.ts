import { readFileSync } from "node:fs";
import { posix } from "node:path";
import { compileFunction } from "node:vm";
import * as domain from "@rimwise/domain";
import ts from "typescript";
import { expect } from "vitest";

const DOMAIN = new URL("../../packages/domain/", import.meta.url);

/** Between an expression and its answer. */
const ARROW = "// →";

/** The examples in the docstring of each function that the domain exports, by its name. */
export function docstringExamples(): ReadonlyMap<string, string> {
  const functions = Object.entries(domain).filter(([, value]) => isPlainFunction(value));
  const files = exportingFiles();
  return new Map(functions.map(([name]) => [name, exampleOf(name, files.get(name) ?? "")]));
}

/** The TypeScript in the domain's README, from top to bottom one program. */
export function readmeExample(): string {
  const text = readFileSync(new URL("README.md", DOMAIN), "utf8");
  return [...text.matchAll(/^```ts\n(.*?)^```/gms)].map(([, code]) => code).join("\n");
}

/**
 * Runs an example with the domain in scope and checks every answer: a number to the decimals written, a record in what is named.
 * Gives how many answers there were.
 */
export function run(example: string): number {
  let answers = 0;
  const check = (actual: unknown, want: unknown, decimals: number): void => {
    answers += 1;
    if (typeof want === "number") expect(actual).toBeCloseTo(want, decimals);
    else if (typeof want === "object" && want !== null) expect(actual).toMatchObject(Object(near(want)));
    else expect(actual).toEqual(want);
  };
  const body = statements(withoutImport(example)).map(checked).join("\n");
  compileFunction(body, ["check", ...Object.keys(domain)])(check, ...Object.values(domain));
  return answers;
}

/** The same with every number in it taken to six decimals. */
function near(want: unknown): unknown {
  if (typeof want === "number") return expect.closeTo(want, 6);
  if (Array.isArray(want)) return want.map(near);
  if (typeof want !== "object" || want === null) return want;
  return Object.fromEntries(Object.entries(want).map(([name, value]) => [name, near(value)]));
}

/** The domain is in scope already; a name that it does not export fails here. */
function withoutImport(example: string): string {
  return example.replace(/^import \{(.*?)\} from "@rimwise\/domain";\n/s, (_, names: string) => {
    for (const name of names.split(",")) if (name.trim() !== "") expect(domain).toHaveProperty(name.trim());
    return "";
  });
}

/** Lines up to the one that ends a statement or carries an answer. */
function statements(code: string): string[] {
  const found = [""];
  for (const line of code.trim().split("\n")) {
    found.push(`${found.pop() ?? ""}${line}\n`);
    if (line.endsWith(";") || line.includes(ARROW)) found.push("");
  }
  return found.filter((statement) => statement.trim() !== "");
}

function checked(statement: string): string {
  const [expression = "", answer] = statement.split(ARROW);
  if (answer === undefined) return statement;
  const decimals = /\.(\d+)\s*$/.exec(answer)?.[1]?.length ?? 0;
  return `check(${expression.trim().replace(/;$/, "")}, (${answer.trim()}), ${decimals});`;
}

function exampleOf(name: string, path: string): string {
  const file = sourceFile(path);
  const found = file.statements.find((node) => ts.isFunctionDeclaration(node) && node.name?.text === name);
  if (found === undefined) throw new Error(`${name} is not a function of ${path}`);
  const tag = ts.getJSDocTags(found).find(({ tagName }) => tagName.text === "example");
  return ts.getTextOfJSDocComment(tag?.comment) ?? "";
}

/** The file behind each name of the domain's door. */
function exportingFiles(): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  for (const { exportClause, moduleSpecifier } of sourceFile("index.ts").statements.filter(
    ts.isExportDeclaration,
  )) {
    if (!exportClause || !ts.isNamedExports(exportClause)) continue;
    if (!moduleSpecifier || !ts.isStringLiteral(moduleSpecifier)) continue;
    for (const { name } of exportClause.elements) files.set(name.text, posix.normalize(moduleSpecifier.text));
  }
  return files;
}

function sourceFile(path: string): ts.SourceFile {
  const text = readFileSync(new URL(`src/${path}`, DOMAIN), "utf8");
  return ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
}

function isPlainFunction(value: unknown): boolean {
  return typeof value === "function" && !/^class\b/.test(String(value));
}
