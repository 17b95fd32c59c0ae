import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { namesOperation } from "./method-names.ts";
import { packedClient } from "./packed.ts";

type Operation = { operationId: string; tags: [string]; summary: string; description?: string };

const { project, installed } = packedClient();
const document: {
  paths: Record<string, Record<string, Operation>>;
  tags: { name: string; description: string }[];
  components: { schemas: object };
} = JSON.parse(readFileSync(new URL("../../openapi/openapi.json", import.meta.url), "utf8"));
const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, operation]) => ({
    call: `${method.toUpperCase()} ${path}`,
    operation,
  })),
);

/** Keeps what was parsed for the next editor. */
const REGISTRY = ts.createDocumentRegistry();

/** A file in a project that has the client installed, as an editor has it open. */
function editorWith(text: string, options: ts.CompilerOptions = {}) {
  const path = join(project, "editor.ts");
  const settings: ts.CompilerOptions = {
    strict: true,
    exactOptionalPropertyTypes: true,
    noUncheckedIndexedAccess: true,
    skipLibCheck: false,
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    lib: ["lib.es2023.d.ts", "lib.dom.d.ts", "lib.dom.iterable.d.ts"],
    types: [],
    ...options,
  };
  const service = ts.createLanguageService(
    {
      ...ts.sys,
      useCaseSensitiveFileNames: () => ts.sys.useCaseSensitiveFileNames,
      getCompilationSettings: () => settings,
      getScriptFileNames: () => [path],
      getScriptVersion: (name) => (name === path ? text : "1"),
      getScriptSnapshot: (name) => {
        const content = name === path ? text : ts.sys.readFile(name);
        return content === undefined ? undefined : ts.ScriptSnapshot.fromString(content);
      },
      getCurrentDirectory: () => project,
      getDefaultLibFileName: ts.getDefaultLibFilePath,
      fileExists: (name) => name === path || ts.sys.fileExists(name),
      readFile: (name) => (name === path ? text : ts.sys.readFile(name)),
    },
    REGISTRY,
  );
  const program = service.getProgram();
  if (program === undefined) throw new Error("there is no program");
  return {
    program,
    path,
    /** What the compiler says of the file and of the package; the platform's own types are not in question. */
    faults: () =>
      program
        .getSourceFiles()
        .filter(({ fileName }) => fileName.startsWith(project))
        .flatMap((file) => [
          ...program.getSyntacticDiagnostics(file),
          ...program.getSemanticDiagnostics(file),
        ])
        .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n")),
    /** The documentation that is shown over the last word before this place. */
    hoverBefore: (place: number) =>
      (service.getQuickInfoAtPosition(path, place - 1)?.documentation ?? [])
        .map((part) => part.text)
        .join(""),
  };
}

const IMPORT =
  'import { createClient } from "@rimwise/client";\nconst client = createClient({ baseUrl: "" });\n';

describe("over each method and resource of the installed package an editor shows its documentation", () => {
  const { program, path } = editorWith(IMPORT);
  const checker = program.getTypeChecker();
  const client = program.getSourceFile(path)?.statements[1];
  if (client === undefined || !ts.isVariableStatement(client)) throw new Error("no client");
  const [declaration] = client.declarationList.declarations;
  if (declaration === undefined) throw new Error("no client");
  const membersOf = (type: ts.Type, node: ts.Node) =>
    type
      .getProperties()
      .map((symbol) => ({ name: symbol.name, type: checker.getTypeOfSymbolAtLocation(symbol, node) }));
  const resources = membersOf(checker.getTypeAtLocation(declaration), declaration);
  const methods = resources
    .filter(({ type }) => type.getCallSignatures().length === 0)
    .flatMap(({ name, type }) => membersOf(type, declaration).map((method) => `${name}.${method.name}`));
  const own = resources.filter(({ type }) => type.getCallSignatures().length > 0).map(({ name }) => name);
  const shown = [...own, ...document.tags.map(({ name }) => name), ...methods];
  const text = `${IMPORT}${shown.map((name) => `client.${name};\n`).join("")}`;
  const editor = editorWith(text);
  const hoverOver = (name: string) =>
    editor.hoverBefore(text.indexOf(`client.${name};`) + `client.${name}`.length);

  it("and there are as many methods as operations", () => {
    expect(methods).toHaveLength(operations.length);
    expect(editor.faults()).toEqual([]);
  });

  it.each(operations.map(({ call, operation }) => [call, operation] as const))("%s", (call, operation) => {
    const [method = ""] = methods.filter((name) => namesOperation(name, operation));
    const documentation = hoverOver(method);
    for (const words of [
      operation.summary,
      ...(operation.description?.split(/\s*\n\s*/) ?? []),
      `\`${call}\``,
    ])
      expect(documentation).toContain(words.replaceAll("*/", "* /"));
  });

  it.each(document.tags.map(({ name, description }) => [name, description]))("%s", (name, description) => {
    expect(hoverOver(name)).toBe(description);
  });

  it("and over what is no operation", () => {
    expect(own).toEqual(["withOptions", "request"]);
    for (const name of own) expect(hoverOver(name)).toMatch(/^\w.{20}/);
  });
});

describe("the exports of the installed package", () => {
  const { program } = editorWith(IMPORT);
  const checker = program.getTypeChecker();
  const index = program.getSourceFile(join(installed, "dist/index.d.ts"));
  const symbol = index && checker.getSymbolAtLocation(index);
  if (symbol === undefined) throw new Error("the package has no index");
  const names = checker
    .getExportsOfModule(symbol)
    .map(({ name }) => name)
    .sort();

  it("are these, and no other", async () => {
    await expect(`${names.length} exports\n\n${names.join("\n")}\n`).toMatchFileSnapshot(
      "package-exports.txt",
    );
  });

  it("have every type that the API document names, and none that is made for one operation", () => {
    const schemas = Object.keys(document.components.schemas);
    expect(names).toEqual(expect.arrayContaining(schemas));
    const plumbing = /(Data|Errors?|Responses?)$/;
    expect(names.filter((name) => plumbing.test(name) && !schemas.includes(name))).toEqual([
      "ApiError",
      "CallError",
      "ConnectionError",
      "TimeoutError",
    ]);
  });
});

describe("the types of the installed package fit", () => {
  const USE = `${IMPORT}
const maybe: string | undefined = undefined;
export const bits = client.bits.list({ q: maybe }, { signal: undefined, headers: undefined });
export const bit = client.bits.get("bit_1", { ifNoneMatch: 3 });
export const label: Promise<string> = client.bits.label("bit_1");
`;

  it.each([
    [
      "in Node, with no types of pages",
      { lib: ["lib.es2023.d.ts"], types: ["node"], typeRoots: [typesOfNode()] },
    ],
    ["in pages, with none of Node", {}],
    [
      "through a bundler",
      { module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler },
    ],
  ])("%s, checked to the last line of their own", (_where, options) => {
    expect(editorWith(USE, options).faults()).toEqual([]);
  });

  it("and what does not fit is found", () => {
    const wrong = `${IMPORT}client.bits.get(3);\nconst n: number = client.bits.label("bit_1");`;
    expect(editorWith(wrong).faults()).toHaveLength(2);
  });
});

function typesOfNode(): string {
  return new URL("../../node_modules/@types", import.meta.url).pathname;
}

describe("what an answer is follows from the field that tells it", () => {
  it("a plan that may be run has a speed, a result its plan, a check its setting, an event its data", () => {
    const right = `${IMPORT}
const plan = await client.plans.preview({} as never);
if (plan.verdict !== "do-not-run") plan.speed.rpm satisfies number;
else plan.speed.rpm satisfies null;
const { results } = await client.plans.previewMany({} as never);
for (const result of results) if (result.outcome === "planned") result.plan.verdict; else result.problem.code;
const check = await client.checks.ask({} as never);
if (check.isAllowed) check.approvalId satisfies string;
for (const { code } of check.isAllowed ? [] : check.reasons) if (code === "bit-held") code satisfies "bit-held";
for await (const event of client.events.list()) {
  if (event.type === "bit.removed") event.data.before.massG satisfies number | undefined;
  if (event.type === "approval.lapsed") event.data.after.lapseId satisfies string | undefined;
  if (event.type === "bit.created") event.data.after.form?.kind satisfies string | undefined;
}
`;
    expect(editorWith(right).faults()).toEqual([]);
  });

  it("and nothing of the other kind is there", () => {
    const wrong = `${IMPORT}
const plan = await client.plans.preview({} as never);
plan.speed.rpm.toFixed();
const { results } = await client.plans.previewMany({} as never);
for (const { plan } of results) plan;
for await (const event of client.events.list()) if (event.type === "bit.created") event.data.before;
const code: "no-such-code" = plan.findings[0]!.code;
`;
    expect(editorWith(wrong).faults()).toHaveLength(4);
  });

  it("parts of a plan are those that were asked for, with the verdict and the advice", () => {
    const right = `${IMPORT}
const query = { fields: ["speed", "passes"] } as const;
const plan = await client.plans.preview({} as never, { query });
if (plan.verdict !== "do-not-run") plan.speed.rpm satisfies number;
plan.passes.map(({ heightMm }) => heightMm);
const { results } = await client.plans.previewMany({} as never, { query: { fields: ["steps"], units: "metric" } });
for (const result of results) if (result.outcome === "planned") [result.plan.steps[0]?.text, result.plan.advice];
const stored = await client.plans.get("plan_1", { query: { fields: ["wood"] } });
[stored.request.woodId, stored.plan.wood.name] satisfies string[];
`;
    expect(editorWith(right).faults()).toEqual([]);
    const wrong = `${IMPORT}
(await client.plans.preview({} as never, { query: { fields: ["speed"] } })).steps;
(await client.plans.get("plan_1", { query: { fields: ["wood"] } })).plan.speed;
client.plans.preview({} as never, { query: { fields: ["tempo"] } });
`;
    expect(editorWith(wrong).faults()).toHaveLength(3);
  });
});
