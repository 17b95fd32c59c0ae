import { execFileSync } from "node:child_process";
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
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
  readonly stop: () => void;
};

type Asked = {
  /** Options of `initdb`. */
  readonly made?: readonly string[];
  readonly port?: number;
  /** Options of the server. */
  readonly settings?: string;
  /** Work in the folder between the making of the data and the start. */
  readonly prepare?: (data: string, run: Server["run"]) => void;
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
export function startServer({
  made = [],
  port = 5432,
  settings = "-c listen_addresses=''",
  prepare,
}: Asked = {}): Server {
  const binaries = binariesOf();
  const folder = mkdtempSync(join(existsSync(MEMORY) ? MEMORY : tmpdir(), "rimwise-postgresql-"));
  const data = join(folder, "data");
  const isRoot = process.getuid?.() === 0;
  if (isRoot) execFileSync("chown", ["postgres", folder]);
  chmodSync(folder, 0o755);
  // The server refuses to run as root; Debian's package made a user for it.
  const run: Server["run"] = (program, words) => {
    const command = [program.startsWith("/") ? program : join(binaries, program), ...words];
    const [first = "", ...rest] = isRoot ? ["runuser", "-u", "postgres", "--", ...command] : command;
    execFileSync(first, rest, { cwd: folder, stdio: ["ignore", "ignore", "pipe"] });
  };
  const locale = ["--locale=C", "--encoding=UTF8"];
  run("initdb", ["-D", data, "--no-sync", ...locale, "-U", USER, "--auth-local=trust", ...made]);
  prepare?.(data, run);
  const options = `-k ${folder} -p ${port} -c max_connections=300 ${settings}`;
  run("pg_ctl", ["-D", data, "-w", "-l", join(folder, "log"), "-o", options, "start"]);
  run("createdb", ["-h", folder, "-p", String(port), "-U", USER, DATABASE]);
  return {
    url: `postgresql://${USER}@localhost:${port}/${DATABASE}?host=${encodeURIComponent(folder)}`,
    folder,
    run,
    stop: () => {
      run("pg_ctl", ["-D", data, "-m", "immediate", "-w", "stop"]);
      rmSync(folder, { recursive: true });
    },
  };
}

function binariesOf(): string {
  const versions = existsSync(DEBIAN_VERSIONS) ? readdirSync(DEBIAN_VERSIONS) : [];
  const newest = versions.sort((one, other) => Number(other) - Number(one))[0];
  if (newest === undefined) {
    throw new Error("PostgreSQL is not installed. Install Debian's package: apt-get install postgresql");
  }
  return join(DEBIAN_VERSIONS, newest, "bin");
}
