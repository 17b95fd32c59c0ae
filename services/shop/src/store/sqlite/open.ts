import { setImmediate as nextTurn } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import Sqlite from "better-sqlite3";
import { newBell } from "../bell.ts";
import { findAnswer } from "../kept-answers.ts";
import { levelOf } from "../migrations.ts";
import type { Shape, Store } from "../store.ts";
import { answersFrom } from "./answer.ts";
import { answersBeside } from "./beside.ts";
import { openCommit } from "./commit.ts";
import { completeRecords } from "./complete.ts";
import { columnsFrom } from "./computed.ts";
import { hasRoom, isWritable, openConnection } from "./connection.ts";
import { copyDatabaseFile } from "./copy.ts";
import { deriveAgain } from "./derive-again.ts";
import { leasesIn } from "./leases.ts";
import { isMigrated, migrate, requireOwn, requireUsableBy } from "./migrate.ts";
import { rememberRows } from "./remember-rows.ts";

export const MIGRATIONS_FOLDER = fileURLToPath(new URL("../../../../../migrations/sqlite", import.meta.url));

const CHECKPOINT_INTERVAL_MS = 30_000;
/** How late what another process commits may be heard of. */
const LISTEN_EVERY_MS = 100;

/**
 * Opens the database of a shop, made if it is not there, checked and migrated. Throws when the file is damaged, newer
 * than this program, or cannot be set to keep what it acknowledges.
 */
export function openSqliteStore(file: string, shape: Shape, now: () => Date = () => new Date()): Store {
  const sqlite = openConnection(file);
  try {
    migrate(sqlite, MIGRATIONS_FOLDER, now());
  } catch (error) {
    sqlite.close();
    throw error;
  }
  return storeOn(sqlite, shape, now().toISOString());
}

/** Whether a database file is at this program's level. Throws a MigrationError when it is newer, or none of this service. */
export function isAtLevel(file: string): boolean {
  const sqlite = new Sqlite(file, { readonly: true, fileMustExist: true });
  try {
    requireOwn(sqlite);
    return isMigrated(sqlite, MIGRATIONS_FOLDER);
  } finally {
    sqlite.close();
  }
}

/** The store on a connection whose database is at this program's level. */
export function storeOn(sqlite: Sqlite.Database, shape: Shape, at: string): Store {
  const answerNow = answersFrom(sqlite);
  completeRecords(sqlite, shape.completions, answerNow, columnsFrom(shape.computed, answerNow));
  deriveAgain(sqlite, shape, answerNow, at);
  const bell = newBell();
  const marked = markOf(sqlite);
  const remembered = answersFrom(sqlite, rememberRows(marked.mark));
  const { answer, readers } = answersBeside(sqlite.name, remembered);
  const commit = openCommit(sqlite, { ...shape, readers });
  const checkpoints = setInterval(() => {
    if (!sqlite.inTransaction) sqlite.pragma("wal_checkpoint(PASSIVE)");
  }, CHECKPOINT_INTERVAL_MS).unref();
  const listening = ringForOthers(sqlite, bell.ring);
  return {
    commit: async (batch) => {
      const result = await commit(batch);
      if (result.kind === "committed") marked.committed();
      if (result.kind === "committed" && batch.changes.length > 0) bell.ring();
      return result;
    },
    answer: async (question) => answer(question),
    findAnswer: async (scope, idempotencyKey) => answer(findAnswer(scope, idempotencyKey)),
    health: async () => ({
      database: sqlite.open && sqlite.prepare("SELECT 1").get() !== undefined,
      ...(sqlite.open ? levelOf(() => requireUsableBy(sqlite, MIGRATIONS_FOLDER)) : { migrations: false }),
      disk: hasRoom(sqlite),
      writable: isWritable(sqlite),
    }),
    mark: marked.mark,
    hearSteps: undefined,
    bell,
    leases: leasesIn(sqlite),
    measures: [],
    exchangeCounts: undefined,
    copyTo: (file) => copyDatabaseFile(sqlite.name, file),
    close: async () => {
      clearInterval(checkpoints);
      clearInterval(listening);
      if (!sqlite.open) return;
      while (sqlite.inTransaction) await nextTurn();
      sqlite.pragma("wal_checkpoint(TRUNCATE)");
      sqlite.close();
    },
  };
}

/** Rings for what other connections commit: SQLite tells nobody, but its `data_version` is another one after each. */
function ringForOthers(sqlite: Sqlite.Database, ring: () => void): NodeJS.Timeout | undefined {
  if (sqlite.memory) return undefined;
  const dataVersion = sqlite.prepare<[], number>("PRAGMA data_version").pluck();
  let seen = dataVersion.get();
  return setInterval(() => {
    if (sqlite.inTransaction) return;
    const now = dataVersion.get();
    if (now !== seen) ring();
    seen = now;
  }, LISTEN_EVERY_MS).unref();
}

/**
 * Counts what this connection commits, and notices what others do: SQLite's `data_version` is another one after each. That
 * is read once in a turn of the event loop: whatever came in with the turn was sent before it was read.
 */
function markOf(sqlite: Sqlite.Database): { readonly mark: () => number; readonly committed: () => void } {
  const dataVersion = sqlite.prepare<[], number>("PRAGMA data_version").pluck();
  let seen = dataVersion.get();
  let commits = 0;
  let isRead = false;
  return {
    mark: () => {
      if (isRead) return commits;
      isRead = true;
      setImmediate(() => {
        isRead = false;
      });
      const now = dataVersion.get();
      if (now !== seen) commits += 1;
      seen = now;
      return commits;
    },
    committed: () => {
      commits += 1;
    },
  };
}
