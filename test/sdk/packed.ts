import { execFile, execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { packClient } from "../../packages/client/pack/pack.ts";

export const CLIENT = fileURLToPath(new URL("../../packages/client/", import.meta.url));
const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const CACHE = fileURLToPath(new URL("../node_modules/.cache/packed-client/", import.meta.url));

/** All that the package is made from: another text of any of these is another package. */
const SOURCES = ["src", "pack", "package.json", "tsconfig.json", "README.md", "METHODS.md", "CHANGELOG.md"];

export type Packed = {
  readonly tarball: string;
  /** A project with nothing but the client in it, as `npm install` leaves it. */
  readonly project: string;
  /** The client in there. */
  readonly installed: string;
};

/** Runs a program while the test's own service goes on answering. */
export const execute = promisify(execFile);

/** The Node that runs the packed client. */
export const NODE = process.env["CLIENT_NODE"] ?? process.execPath;

/** The client as it is published: packed and unpacked once for all tests of these sources. */
export function packedClient(): Packed {
  const folder = join(CACHE, digestOfSources());
  if (!existsSync(folder)) make(folder);
  const installed = join(folder, "node_modules/@rimwise/client");
  return { tarball: join(folder, "client.tgz"), project: folder, installed };
}

/** What a script prints that Node runs in a project with the packed client. */
export async function runInProject(
  { project }: Pick<Packed, "project">,
  script: string,
  environment: NodeJS.ProcessEnv = {},
): Promise<string> {
  const options = { cwd: project, env: { ...process.env, ...environment } };
  return (await execute(NODE, ["--input-type=module", "--eval", script], options)).stdout;
}

function make(folder: string): void {
  mkdirSync(CACHE, { recursive: true });
  const half = mkdtempSync(join(CACHE, "half-"));
  const installed = join(half, "node_modules/@rimwise/client");
  mkdirSync(installed, { recursive: true });
  renameSync(packClient(half), join(half, "client.tgz"));
  execFileSync("tar", ["-xzf", join(half, "client.tgz"), "--strip-components=1", "-C", installed]);
  try {
    renameSync(half, folder);
  } catch (error) {
    // Another worker was first.
    rmSync(half, { recursive: true });
    if (!existsSync(folder)) throw error;
  }
}

function digestOfSources(): string {
  const digest = createHash("sha256");
  const files = [
    ...SOURCES.flatMap((name) => filesIn(join(CLIENT, name))),
    join(ROOT, "tsconfig.base.json"),
    join(ROOT, "pnpm-lock.yaml"),
    join(ROOT, "LICENSE"),
  ];
  for (const file of files) digest.update(`${relative(ROOT, file)}\0`).update(readFileSync(file));
  return digest.digest("hex").slice(0, 16);
}

function filesIn(path: string): string[] {
  const entries =
    path.endsWith("src") || path.endsWith("pack")
      ? readdirSync(path, { recursive: true, withFileTypes: true })
      : [];
  if (entries.length === 0) return [path];
  return entries
    .filter((entry) => entry.isFile() && !entry.name.endsWith(".test.ts"))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}
