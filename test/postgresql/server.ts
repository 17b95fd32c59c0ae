import { execFileSync } from "node:child_process";
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A PostgreSQL server for the time of a run. */
export type Server = { readonly url: string; readonly stop: () => void };

const DEBIAN_VERSIONS = "/usr/lib/postgresql";
/** Memory that is a file system: flushing costs nothing there, so that every safety setting of the server stays on. */
const MEMORY = "/dev/shm";
const DATABASE = "shop";
const USER = "rimwise";

/**
 * Starts a server in a temporary folder, reached by a socket there, as a user without privileges. Throws with a sentence when
 * PostgreSQL is not installed.
 */
export function startServer(): Server {
  programOf("initdb");
  const folder = mkdtempSync(join(existsSync(MEMORY) ? MEMORY : tmpdir(), "rimwise-postgresql-"));
  const data = join(folder, "data");
  const isRoot = process.getuid?.() === 0;
  if (isRoot) execFileSync("chown", ["postgres", folder]);
  chmodSync(folder, 0o755);
  // The server refuses to run as root; Debian's package made a user for it.
  const run = (program: string, words: readonly string[]) => {
    const command = [programOf(program), ...words];
    const [first = "", ...rest] = isRoot ? ["runuser", "-u", "postgres", "--", ...command] : command;
    execFileSync(first, rest, { cwd: folder, stdio: ["ignore", "ignore", "pipe"] });
  };
  run("initdb", ["-D", data, "--no-sync", "--locale=C", "--encoding=UTF8", "-U", USER, "--auth=trust"]);
  const options = `-k ${folder} -c listen_addresses='' -c max_connections=300`;
  run("pg_ctl", ["-D", data, "-w", "-l", join(folder, "log"), "-o", options, "start"]);
  run("createdb", ["-h", folder, "-U", USER, DATABASE]);
  return {
    url: `postgresql://${USER}@localhost/${DATABASE}?host=${encodeURIComponent(folder)}`,
    stop: () => {
      run("pg_ctl", ["-D", data, "-m", "immediate", "-w", "stop"]);
      rmSync(folder, { recursive: true });
    },
  };
}

/** The path of a program that comes with PostgreSQL. */
export function programOf(name: string): string {
  return join(binariesOf(), name);
}

function binariesOf(): string {
  const versions = existsSync(DEBIAN_VERSIONS) ? readdirSync(DEBIAN_VERSIONS) : [];
  const newest = versions.sort((one, other) => Number(other) - Number(one))[0];
  if (newest === undefined) {
    throw new Error("PostgreSQL is not installed. Install Debian's package: apt-get install postgresql");
  }
  return join(DEBIAN_VERSIONS, newest, "bin");
}
