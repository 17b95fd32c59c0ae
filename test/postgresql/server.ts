import { execFileSync } from "node:child_process";
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A PostgreSQL server for the time of a run. */
export type Server = {
  /** Its database, by the socket. */
  readonly url: string;
  /** Where its data and its socket are. */
  readonly folder: string;
  /** Runs one of PostgreSQL's programs, or another by its path, as the server's user. */
  readonly run: (program: string, words: readonly string[]) => void;
  /** Ends it as `kill -9` and a power cut do: what was not flushed is gone. */
  readonly crash: () => void;
  readonly start: () => void;
  /** Makes a standby of it, which follows it; it acknowledges nothing that the standby has not got. */
  readonly addStandby: () => Server;
  /** Makes a standby a primary. */
  readonly promote: () => void;
  readonly stop: () => void;
};

/** How it is reached and set. */
type Ways = {
  readonly port?: number;
  /** Options of the server. */
  readonly settings?: string;
};

type Asked = Ways & {
  /** Options of `initdb`. */
  readonly made?: readonly string[];
  /** Where its folder is made. Default: memory, where there is some. */
  readonly parent?: string;
  /** Work in the folder between the making of the data and the start. */
  readonly prepare?: (data: string, run: Server["run"]) => void;
};

const DEBIAN_VERSIONS = "/usr/lib/postgresql";
/** Memory that is a file system: flushing costs nothing there, so that every safety setting of the server stays on. */
const MEMORY = "/dev/shm";
const DATABASE = "shop";
const USER = "rimwise";
const PORT = 5432;

/**
 * Starts a server in a temporary folder, reached by a socket there, as a user without privileges. Throws with a sentence when
 * PostgreSQL is not installed.
 */
export function startServer({ made = [], prepare, parent, ...ways }: Asked = {}): Server {
  const folder = newFolder(parent);
  const server = serverIn(folder, ways);
  const data = dataIn(folder);
  const locale = ["--locale=C", "--encoding=UTF8"];
  server.run("initdb", ["-D", data, "--no-sync", ...locale, "-U", USER, "--auth-local=trust", ...made]);
  prepare?.(data, server.run);
  server.start();
  server.run("createdb", [...reaching(folder, ways), DATABASE]);
  return server;
}

function serverIn(folder: string, ways: Ways): Server {
  const { port = PORT, settings = "-c listen_addresses=''" } = ways;
  const data = dataIn(folder);
  const run = runIn(folder);
  const control = (words: readonly string[]) => run("pg_ctl", ["-D", data, "-w", ...words]);
  const crash = () => control(["-m", "immediate", "stop"]);
  return {
    url: `postgresql://${USER}@localhost:${port}/${DATABASE}?host=${encodeURIComponent(folder)}`,
    folder,
    run,
    crash,
    start: () => {
      const options = `-k ${folder} -p ${port} -c max_connections=300 ${settings}`;
      control(["-l", join(folder, "log"), "-o", options, "start"]);
    },
    addStandby: () => standbyOf(folder, ways),
    promote: () => control(["promote"]),
    stop: () => {
      if (existsSync(join(data, "postmaster.pid"))) crash();
      rmSync(folder, { recursive: true });
    },
  };
}

function standbyOf(primary: string, ways: Ways): Server {
  const folder = newFolder();
  const copying = ["-R", "-X", "stream", "--no-sync", "-c", "fast"];
  const standby = serverIn(folder, ways);
  standby.run("pg_basebackup", ["-D", dataIn(folder), ...reaching(primary, ways), ...copying]);
  standby.start();
  for (const sql of ["ALTER SYSTEM SET synchronous_standby_names = '*'", "SELECT pg_reload_conf()"])
    standby.run("psql", [...reaching(primary, ways), "-d", DATABASE, "-c", sql]);
  return standby;
}

/** Where a server listens, for PostgreSQL's own programs. */
function reaching(folder: string, { port = PORT }: Ways): readonly string[] {
  return ["-h", folder, "-p", String(port), "-U", USER];
}

function newFolder(parent = existsSync(MEMORY) ? MEMORY : tmpdir()): string {
  programOf("initdb");
  const folder = mkdtempSync(join(parent, "rimwise-postgresql-"));
  if (isRoot()) execFileSync("chown", ["postgres", folder]);
  chmodSync(folder, 0o755);
  return folder;
}

function dataIn(folder: string): string {
  return join(folder, "data");
}

/** The server refuses to run as root; Debian's package made a user for it. */
function runIn(folder: string): Server["run"] {
  return (program, words) => {
    const command = [program.startsWith("/") ? program : programOf(program), ...words];
    const [first = "", ...rest] = isRoot() ? ["runuser", "-u", "postgres", "--", ...command] : command;
    execFileSync(first, rest, { cwd: folder, stdio: ["ignore", "ignore", "pipe"] });
  };
}

function isRoot(): boolean {
  return process.getuid?.() === 0;
}

/** The path of a program that comes with PostgreSQL. */
export function programOf(name: string): string {
  return join(binariesOf(), name);
}

/** The programs of the newest version that Debian's package has installed, or of another that is named. */
function binariesOf(): string {
  const named = process.env["POSTGRESQL_PATH"];
  const versions = existsSync(DEBIAN_VERSIONS) ? readdirSync(DEBIAN_VERSIONS) : [];
  const newest = versions.sort((one, other) => Number(other) - Number(one))[0] ?? "";
  const binaries = named ?? join(DEBIAN_VERSIONS, newest, "bin");
  if (existsSync(join(binaries, "initdb"))) return binaries;
  throw new Error(
    "PostgreSQL is not installed. Install Debian's package (apt-get install postgresql), or name the folder of its programs in POSTGRESQL_PATH.",
  );
}

const TICKS_PER_SECOND = 100;

/** Processor time that a server has used so far, with all of its processes (proc_pid_stat(5), fields 4 and 14 to 17). */
export function processorSecondsOf({ folder }: Server): number {
  const main = readFileSync(join(folder, "data", "postmaster.pid"), "utf8").split("\n", 1)[0] ?? "";
  let ticks = 0;
  for (const entry of readdirSync("/proc").filter((name) => /^\d+$/.test(name))) {
    const fields = statusOf(entry);
    if (entry === main) ticks += fields.slice(11, 15).reduce((sum, field) => sum + Number(field), 0);
    else if (fields[1] === main) ticks += Number(fields[11]) + Number(fields[12]);
  }
  return ticks / TICKS_PER_SECOND;
}

/** What stands after a process's name; nothing when it is gone. */
function statusOf(process: string): string[] {
  try {
    return readFileSync(`/proc/${process}/stat`, "utf8").split(") ").at(-1)?.split(" ") ?? [];
  } catch {
    return [];
  }
}
