import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { expect, onTestFinished, test } from "vitest";
import { bundleProgram } from "./bundle.ts";

/** Runs a program, and keeps its compiled code as the build does. */
const KEEP = `
  import { writeFileSync } from "node:fs";
  const { cacheFile, digest, script } = await import(process.argv[1]);
  process.stdout.write(script.cachedDataRejected === false ? ", compiled before" : ", compiled now");
  writeFileSync(cacheFile, Buffer.concat([digest, script.createCachedData()]));
`;

test("a bundled program starts from the code that was compiled of it before", async () => {
  const starter = await bundled("one", temporaryFolder());
  expect(await runAndKept(starter)).toBe("one, compiled now");
  expect(await runAndKept(starter)).toBe("one, compiled before");
});

test("what is bundled again is compiled again, also when it is as long as before", async () => {
  const folder = temporaryFolder();
  const starter = await bundled("one", folder);
  const length = readFileSync(join(folder, "program.cjs")).length;
  await runAndKept(starter);
  await bundled("two", folder);
  expect(readFileSync(join(folder, "program.cjs"))).toHaveLength(length);
  expect(await runAndKept(starter)).toBe("two, compiled now");
});

test.each([
  ["not there", undefined],
  ["empty", ""],
  ["none", "no code at all"],
])("starts when the code compiled before is %s", async (_what, content) => {
  const folder = temporaryFolder();
  const starter = await bundled("one", folder);
  if (content !== undefined) writeFileSync(join(folder, "program.cache"), content);
  expect(await runAndKept(starter)).toBe("one, compiled now");
});

async function bundled(word: string, folder: string): Promise<string> {
  const program = join(folder, "program.ts");
  writeFileSync(program, `process.stdout.write("${word}");`);
  return bundleProgram({ name: "program", program, folder });
}

async function runAndKept(starter: string): Promise<string> {
  const { stdout } = await promisify(execFile)(process.execPath, [
    "--input-type=module",
    "-e",
    KEEP,
    pathToFileURL(starter).href,
  ]);
  return stdout;
}

function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-bundle-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  return folder;
}
