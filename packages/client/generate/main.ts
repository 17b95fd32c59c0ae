import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Document } from "./document.ts";
import { operationsOf } from "./document.ts";
import { methodsText } from "./methods.ts";
import { modelsText, resourceFiles } from "./resources.ts";
import { typeFiles } from "./types.ts";

const MANIFEST = new URL("../package.json", import.meta.url);
const DOCUMENT = new URL("../../../openapi/openapi.json", import.meta.url);
const GENERATED = new URL("../src/generated/", import.meta.url);
/** The one file in there that people write. */
const ROOM_SIGN = "README.md";

const wanted = await generatedFiles();
if (process.argv.includes("--check")) await check();
else await write();

async function generatedFiles(): Promise<Map<string, string>> {
  const document: Document = JSON.parse(await readFile(DOCUMENT, "utf8"));
  const { version }: { version: string } = JSON.parse(await readFile(MANIFEST, "utf8"));
  const operations = operationsOf(document);
  return new Map([
    ...(await typeFiles(document)),
    ...resourceFiles(operations, document.tags),
    ["models.ts", modelsText(document, operations)],
    ["../../METHODS.md", methodsText(operations, document.tags)],
    [
      "version.ts",
      `// Written by packages/client/generate/main.ts. Do not edit.\n\nexport const CLIENT_VERSION = "${version}";\n`,
    ],
  ]);
}

async function write(): Promise<void> {
  await mkdir(GENERATED, { recursive: true });
  for (const name of await surplus()) await rm(new URL(name, GENERATED));
  for (const [name, text] of wanted) await writeFile(new URL(name, GENERATED), text);
}

async function check(): Promise<void> {
  const stale = await surplus();
  for (const [name, text] of wanted) {
    const present = await readFile(new URL(name, GENERATED), "utf8").catch(() => undefined);
    if (present !== text) stale.push(name);
  }
  if (stale.length === 0) return;
  const folder = fileURLToPath(GENERATED);
  process.stderr.write(
    `Stale, run \`pnpm generate\`:\n${stale.map((name) => `  ${folder}${name}\n`).join("")}`,
  );
  process.exitCode = 1;
}

async function surplus(): Promise<string[]> {
  const present = await readdir(GENERATED).catch((): string[] => []);
  return present.filter((name) => name !== ROOM_SIGN && !wanted.has(name));
}
