import { statfsSync } from "node:fs";
import { dirname } from "node:path";
import Sqlite from "better-sqlite3";

export const IN_MEMORY = ":memory:";

const BUSY_TIMEOUT_MS = 5000;
/** The write-ahead log is emptied on a timer; this is the limit should the timer not keep up. */
const PAGES_IN_LOG_AT_MOST = 10_000;
/** SQLite's name for `synchronous=FULL`: a commit is on the disk before it is acknowledged. */
const SYNCHRONOUS_FULL = 2;
const LEAST_FREE_BYTES = 64 * 1024 * 1024;

/** Opens a file, made when it is not there. Throws when it is damaged or cannot be set to keep what it acknowledges. */
export function openConnection(file: string): Sqlite.Database {
  const sqlite = new Sqlite(file);
  try {
    prepareConnection(sqlite);
  } catch (error) {
    sqlite.close();
    throw error;
  }
  return sqlite;
}

/** Whether there is room to write. */
export function hasRoom(sqlite: Sqlite.Database): boolean {
  return sqlite.name === IN_MEMORY || freeBytes(sqlite.name) >= LEAST_FREE_BYTES;
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

function freeBytes(file: string): number {
  const { bavail, bsize } = statfsSync(dirname(file));
  return bavail * bsize;
}
