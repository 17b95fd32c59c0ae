import { execFileSync } from "node:child_process";
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A PostgreSQL server for the time of a run, reached by a socket in its folder. */
export type Server = {
  readonly url: string;
  readonly folder: string;
  /** Ends it as `kill -9` and a power cut do: what was not flushed is gone. */
  readonly crash: () => void;
  readonly start: () => void;
  /** Makes a standby of it, which follows it; it acknowledges nothing that the standby has not got. */
  readonly addStandby: () => Server;
  /** Makes a standby a primary. */
  readonly promote: () => void;
  readonly stop: () => void;
};

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
  const folder = newFolder();
  runIn(folder, "initdb", [
    ...["-D", dataIn(folder), "--no-sync", "--locale=C"],
    ...["--encoding=UTF8", "-U", USER, "--auth=trust"],
  ]);
  const server = serverIn(folder);
  server.start();
  runIn(folder, "createdb", ["-h", folder, "-U", USER, DATABASE]);
  return server;
}

function serverIn(folder: string): Server {
  const data = dataIn(folder);
  const control = (words: readonly string[]) => runIn(folder, "pg_ctl", ["-D", data, "-w", ...words]);
  const crash = () => control(["-m", "immediate", "stop"]);
  return {
    url: `postgresql://${USER}@localhost/${DATABASE}?host=${encodeURIComponent(folder)}`,
    folder,
    crash,
    start: () => {
      const options = `-k ${folder} -c listen_addresses='' -c max_connections=300`;
      control(["-l", join(folder, "log"), "-o", options, "start"]);
    },
    addStandby: () => standbyOf(folder),
    promote: () => control(["promote"]),
    stop: () => {
      if (existsSync(join(data, "postmaster.pid"))) crash();
      rmSync(folder, { recursive: true });
    },
  };
}

function standbyOf(primary: string): Server {
  const folder = newFolder();
  const words = [
    "-D",
    dataIn(folder),
    "-h",
    primary,
    "-U",
    USER,
    "-R",
    "-X",
    "stream",
    "--no-sync",
    "-c",
    "fast",
  ];
  runIn(folder, "pg_basebackup", words);
  const standby = serverIn(folder);
  standby.start();
  for (const sql of ["ALTER SYSTEM SET synchronous_standby_names = '*'", "SELECT pg_reload_conf()"])
    runIn(folder, "psql", ["-h", primary, "-U", USER, "-d", DATABASE, "-c", sql]);
  return standby;
}

function newFolder(): string {
  programOf("initdb");
  const folder = mkdtempSync(join(existsSync(MEMORY) ? MEMORY : tmpdir(), "rimwise-postgresql-"));
  if (isRoot()) execFileSync("chown", ["postgres", folder]);
  chmodSync(folder, 0o755);
  return folder;
}

function dataIn(folder: string): string {
  return join(folder, "data");
}

/** The server refuses to run as root; Debian's package made a user for it. */
function runIn(folder: string, program: string, words: readonly string[]): void {
  const command = [programOf(program), ...words];
  const [first = "", ...rest] = isRoot() ? ["runuser", "-u", "postgres", "--", ...command] : command;
  execFileSync(first, rest, { cwd: folder, stdio: ["ignore", "ignore", "pipe"] });
}

function isRoot(): boolean {
  return process.getuid?.() === 0;
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
