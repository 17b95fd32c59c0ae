import { mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ts from "typescript";
import { CLIENT, execute, NODE, packedClient } from "./packed.ts";

/** What a program left behind. */
export type Ended = { readonly code: number; readonly out: string; readonly err: string };

/** An empty folder in which programs find the packed client, and what removes it. */
export function folderWithClient(): { folder: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-programs-"));
  symlinkSync(join(packedClient().project, "node_modules"), join(folder, "node_modules"));
  writeFileSync(join(folder, "package.json"), '{ "type": "module" }');
  return { folder, remove: () => rmSync(folder, { recursive: true }) };
}

/** Starts a program in a folder. Its types are the compiler's business, and are left out here. */
export function start(
  { folder, code, given = [] }: { folder: string; code: string; given?: readonly string[] },
  environment: NodeJS.ProcessEnv,
) {
  const { outputText } = ts.transpileModule(code, {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext },
  });
  const file = join(mkdtempSync(join(folder, "program-")), "main.js");
  writeFileSync(file, outputText);
  const running = execute(NODE, [file, ...given], { cwd: folder, env: { ...process.env, ...environment } });
  const ended: Promise<Ended> = running.then(
    ({ stdout, stderr }) => ({ code: 0, out: stdout, err: stderr }),
    ({ code, stdout, stderr }) => ({ code, out: stdout, err: stderr }),
  );
  return { child: running.child, ended };
}

/** The text of one of the client's example programs. */
export function exampleNamed(name: string): string {
  return readFileSync(join(CLIENT, "examples", `${name}.ts`), "utf8");
}
