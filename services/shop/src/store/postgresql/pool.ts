import pg from "pg";
import { DatabaseFileError } from "../database-file-error.ts";
import type { Address } from "./address.ts";

/** Types whose values are read as SQLite gives them, so that a record has one digest whatever keeps it. */
const READERS: ReadonlyMap<number, (text: string) => unknown> = new Map<number, (text: string) => unknown>([
  [pg.types.builtins.INT8, Number],
  [pg.types.builtins.BOOL, (text) => (text === "t" ? 1 : 0)],
  [pg.types.builtins.JSON, (text) => text],
]);

/** Servers from here on have what the migrations use. */
const OLDEST_VERSION = 140_000;

type Fact = {
  readonly asked: string;
  readonly isFine: (found: string) => boolean;
  readonly sentence: (found: string) => string;
};

/** What must be so for what is acknowledged to be kept, and for texts to be compared as everywhere. */
const FACTS: readonly Fact[] = [
  {
    asked: "current_setting('server_version_num')",
    isFine: (found) => Number(found) >= OLDEST_VERSION,
    sentence: () => "the server is older than PostgreSQL 14. Use a newer one.",
  },
  {
    asked: "(SELECT datcollate FROM pg_database WHERE datname = current_database())",
    isFine: (found) => found === "C" || found === "POSIX",
    sentence: (found) =>
      `its collation is ${found} and must be C. Make the database with: CREATE DATABASE … TEMPLATE template0 ENCODING 'UTF8' LOCALE 'C'.`,
  },
  {
    asked: "current_setting('server_encoding')",
    isFine: (found) => found === "UTF8",
    sentence: (found) => `its encoding is ${found} and must be UTF8. Make it again with ENCODING 'UTF8'.`,
  },
  {
    asked: "(SELECT count(*) FROM pg_collation WHERE collname = 'und-x-icu')",
    isFine: (found) => Number(found) > 0,
    sentence: () => "the server was built without ICU, which compares names. Use one that has it.",
  },
  ...["fsync", "full_page_writes"].map((name) => ({
    asked: `current_setting('${name}')`,
    isFine: (found: string) => found === "on",
    sentence: () => `${name} is off, so that a crash would lose what was acknowledged. Set it to on.`,
  })),
  {
    asked: "current_setting('synchronous_commit')",
    isFine: (found) => found !== "off",
    sentence: () =>
      "synchronous_commit is off, so that a crash would lose what was acknowledged. Set it to on for this database.",
  },
  {
    asked: "pg_is_in_recovery()::text",
    isFine: (found) => found === "false",
    sentence: () => "this is a standby, which cannot be written. Name the primary.",
  },
];

/** One connection for work that may take as long as it takes: migrations, and what is derived again. */
export function openPatientPool({ pool }: Address): pg.Pool {
  return openPool({ pool: { ...pool, max: 1, query_timeout: 0 } });
}

/** Connections to a database, opened when they are needed. */
export function openPool({ pool }: Pick<Address, "pool">): pg.Pool {
  const opened = new pg.Pool({
    ...pool,
    pipeline: true,
    types: {
      getTypeParser: (oid: number, format?: "text" | "binary") =>
        READERS.get(oid) ?? pg.types.getTypeParser(oid, format),
    },
  });
  // A connection that breaks while nobody uses it is replaced by the next one: nothing is lost.
  opened.on("error", () => undefined);
  // Of one that is in use whoever uses it hears: without a listener here it would end the process.
  opened.on("connect", (client) => client.on("error", () => undefined));
  return opened;
}

/** Throws with a sentence when the database cannot be reached, or would not keep what is acknowledged. */
export async function requireFit(pool: pg.Pool): Promise<void> {
  const found = await factsOf(pool);
  for (const [index, { isFine, sentence }] of FACTS.entries()) {
    const fact = String(found[index]);
    if (!isFine(fact)) throw new DatabaseFileError(sentence(fact));
  }
}

async function factsOf(pool: pg.Pool): Promise<readonly unknown[]> {
  const text = `SELECT ${FACTS.map(({ asked }) => asked).join(", ")}`;
  try {
    const { rows } = await pool.query<unknown[]>({ text, rowMode: "array" });
    return rows[0] ?? [];
  } catch (cause) {
    throw new DatabaseFileError(`it cannot be used: ${reasonOf(cause)}.`, { cause });
  }
}

/** The server's or the machine's own words: none of them has the password in it. */
function reasonOf(error: unknown): string {
  if (error instanceof AggregateError && error.errors.length > 0) return reasonOf(error.errors[0]);
  return error instanceof Error && error.message !== "" ? error.message : "there is no answer";
}
