import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { breakingChanges } from "./breaking-changes.ts";

const FILE = "openapi/openapi.json";
const ROOT = new URL("../../../../", import.meta.url);

/** The last released version by its tag; undefined before the first release. */
function lastRelease(): string | undefined {
  try {
    return git("describe", "--tags", "--abbrev=0", "--match", "v[0-9]*").trim();
  } catch {
    return undefined;
  }
}

function git(...args: string[]): string {
  return execFileSync("git", args, { cwd: ROOT, encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });
}

const release = lastRelease();
if (release === undefined) {
  process.stdout.write("Nothing is released yet: there is no API description that callers rely on.\n");
} else {
  const found = breakingChanges(
    JSON.parse(git("show", `${release}:${FILE}`)),
    JSON.parse(readFileSync(new URL(FILE, ROOT), "utf8")),
  );
  for (const { where, what } of found) process.stderr.write(`${where} ${what}\n`);
  process.stdout.write(`${found.length} changes since ${release} that callers may break on.\n`);
  process.exitCode = found.length === 0 ? 0 : 1;
}
