import type { Pool } from "pg";
import { DatabaseFileError } from "../database-file-error.ts";

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

/** Throws with a sentence when the database cannot be reached, or would not keep what is acknowledged. */
export async function requireFit(pool: Pool): Promise<void> {
  requireFacts(await factsOf(pool));
}

/** The same of what was found. */
export function requireFacts(found: readonly unknown[]): void {
  for (const [index, { isFine, sentence }] of FACTS.entries()) {
    const fact = String(found[index]);
    if (!isFine(fact)) throw new DatabaseFileError(sentence(fact));
  }
}

async function factsOf(pool: Pool): Promise<readonly unknown[]> {
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
