import { join } from "node:path";
import ts from "typescript";
import { expect, it } from "vitest";
import { ROOT, sourceFiles } from "./source-files.ts";

it.each(["packages/domain", "packages/client"])(
  "the code in the README of %s is a program whose types fit",
  (home) => {
    const [readme] = sourceFiles([`${home}/README.md`]);
    const code = [...(readme?.text ?? "").matchAll(/^```ts\n(.*?)^```/gms)]
      .map(([, block]) => block)
      .join("\n");
    expect(code).toContain(`from "@rimwise/${home.split("/").at(-1)}"`);
    expect(typeFaults(code)).toEqual([]);
  },
);

it("a type that does not fit is found", () => {
  expect(typeFaults('import { woodById } from "@rimwise/domain";\nwoodById(3);')).toEqual([
    expect.stringContaining("not assignable"),
  ]);
});

/** What every module here imports in the end is parsed once. */
const parsed = new Map<string, ts.SourceFile | undefined>();

/** What the compiler says of a module at the root of the tests, without writing anything. */
function typeFaults(code: string): string[] {
  const path = join(ROOT, "test/readme-code.ts");
  const { config } = ts.readConfigFile(join(ROOT, "tsconfig.base.json"), ts.sys.readFile);
  const { options } = ts.convertCompilerOptionsFromJson(
    {
      ...config.compilerOptions,
      composite: false,
      incremental: false,
      noEmit: true,
      types: ["node"],
      lib: ["es2023", "dom", "dom.iterable"],
    },
    ROOT,
  );
  const host = ts.createCompilerHost(options);
  const program = ts.createProgram([path], options, {
    ...host,
    fileExists: (name) => name === path || host.fileExists(name),
    getSourceFile: (name, version) => {
      if (name === path) return ts.createSourceFile(name, code, version, true);
      if (!parsed.has(name)) parsed.set(name, host.getSourceFile(name, version));
      return parsed.get(name);
    },
  });
  // Of this module alone: the compiler looks at everything that it imports in a run of its own.
  const module = program.getSourceFile(path);
  return [...program.getSyntacticDiagnostics(module), ...program.getSemanticDiagnostics(module)].map(
    ({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"),
  );
}
