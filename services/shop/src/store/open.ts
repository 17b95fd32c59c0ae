import { statfsSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import Sqlite from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { whatFollows } from "../rooms/follow.ts";
import { type Answers, keptAnswers } from "./answers.ts";
import { openCommit } from "./commit.ts";
import type { Database } from "./database.ts";
import { isMigrated, migrate } from "./migrate.ts";
import type { Commit } from "./port.ts";
import { reindexBits } from "./reindex.ts";

/** What the service needs to know before it takes requests. */
export type StoreHealth = {
  readonly database: boolean;
  readonly migrations: boolean;
  readonly disk: boolean;
};

export type Store = {
  readonly commit: Commit;
  /** For `reads.ts` files, to prepare their queries on. */
  readonly database: Database;
  readonly findAnswer: Answers["find"];
  readonly health: () => Promise<StoreHealth>;
  readonly close: () => void;
};

const MIGRATIONS_FOLDER = fileURLToPath(new URL("../../../../migrations", import.meta.url));
const IN_MEMORY = ":memory:";

const BUSY_TIMEOUT_MS = 5000;
const CHECKPOINT_INTERVAL_MS = 30_000;
/** The write-ahead log is emptied on a timer; this is the limit should the timer not keep up. */
const PAGES_IN_LOG_AT_MOST = 10_000;
/** SQLite's name for `synchronous=FULL`: a commit is on the disk before it is acknowledged. */
const SYNCHRONOUS_FULL = 2;
const LEAST_FREE_BYTES = 64 * 1024 * 1024;

/**
 * Opens the database of a shop, made if it is not there, checked and migrated. Throws where the file is damaged, newer
 * than this program, or cannot be set to keep what it acknowledges.
 */
export function openStore(file: string, now: () => Date = () => new Date()): Store {
  const sqlite = new Sqlite(file);
  try {
    prepareConnection(sqlite);
    migrate(sqlite, MIGRATIONS_FOLDER, now());
  } catch (error) {
    sqlite.close();
    throw error;
  }
  const database = drizzle(sqlite);
  reindexBits(sqlite, database);
  const answers = keptAnswers(database);
  const checkpoints = setInterval(
    () => sqlite.pragma("wal_checkpoint(PASSIVE)"),
    CHECKPOINT_INTERVAL_MS,
  ).unref();
  return {
    commit: openCommit(sqlite, answers, whatFollows(database)),
    database,
    findAnswer: answers.find,
    health: async () => healthOf(sqlite),
    close: () => {
      clearInterval(checkpoints);
      sqlite.pragma("wal_checkpoint(TRUNCATE)");
      sqlite.close();
    },
  };
}

function prepareConnection(sqlite: Sqlite.Database): void {
  sqlite.pragma(`busy_timeout = ${BUSY_TIMEOUT_MS}`);
  assertPragma(sqlite, "quick_check", "ok");
  sqlite.pragma("journal_mode = WAL");
  assertPragma(sqlite, "journal_mode", sqlite.memory ? "memory" : "wal");
  sqlite.pragma("synchronous = FULL");
  assertPragma(sqlite, "synchronous", SYNCHRONOUS_FULL);
  sqlite.pragma("foreign_keys = ON");
  assertPragma(sqlite, "foreign_keys", 1);
  sqlite.pragma(`wal_autocheckpoint = ${PAGES_IN_LOG_AT_MOST}`);
}

function assertPragma(sqlite: Sqlite.Database, name: string, wanted: string | number): void {
  const found = sqlite.pragma(name, { simple: true });
  if (found !== wanted) throw new Error(`${sqlite.name}: ${name} is ${String(found)} and must be ${wanted}`);
}

function healthOf(sqlite: Sqlite.Database): StoreHealth {
  return {
    database: sqlite.open && sqlite.prepare("SELECT 1").get() !== undefined,
    migrations: sqlite.open && isMigrated(sqlite, MIGRATIONS_FOLDER),
    disk: sqlite.name === IN_MEMORY || freeBytes(sqlite.name) >= LEAST_FREE_BYTES,
  };
}

function freeBytes(file: string): number {
  const { bavail, bsize } = statfsSync(dirname(file));
  return bavail * bsize;
}
