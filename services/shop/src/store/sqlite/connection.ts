import { accessSync, constants, existsSync, statfsSync, statSync } from "node:fs";
import { dirname } from "node:path";
import Sqlite from "better-sqlite3";
import { DatabaseFileError } from "../database-file-error.ts";
import { folded } from "../folded.ts";
import { makePrivate, makePrivateFile } from "../private-file.ts";

export const IN_MEMORY = ":memory:";

export const BUSY_TIMEOUT_MS = 5000;
/** The write-ahead log is emptied on a timer; this is the limit should the timer not keep up. */
const PAGES_IN_LOG_AT_MOST = 10_000;
/** SQLite's name for `synchronous=FULL`: a commit is on the disk before it is acknowledged. */
const SYNCHRONOUS_FULL = 2;
const LEAST_FREE_BYTES = 64 * 1024 * 1024;

/** Files that SQLite keeps beside a database, by what it adds to the name: their rights are the database's own. */
const FILES_OF_ONE = ["", "-wal", "-shm"];
const ANYBODY_WRITES = 0o222;

/**
 * Opens a file, made when it is not there, and only its owner's to read. Throws when it is damaged or cannot be set to
 * keep what it acknowledges.
 */
export function openConnection(file: string): Sqlite.Database {
  if (file !== IN_MEMORY) {
    if (!existsSync(file)) makePrivateFile(file);
    for (const suffix of FILES_OF_ONE) makePrivate(`${file}${suffix}`);
  }
  const sqlite = new Sqlite(file);
  try {
    prepareConnection(sqlite);
  } catch (error) {
    sqlite.close();
    throw error;
  }
  return sqlite;
}

/** A connection to a file that is there, to read from it alone. */
export function openToRead(file: string): Sqlite.Database {
  const sqlite = new Sqlite(file, { readonly: true, fileMustExist: true, timeout: BUSY_TIMEOUT_MS });
  addFunctions(sqlite);
  return sqlite;
}

/** Whether there is room to write. */
export function hasRoom(sqlite: Sqlite.Database): boolean {
  return sqlite.name === IN_MEMORY || freeBytes(sqlite.name) >= LEAST_FREE_BYTES;
}

/** Whether the file is still there and may be written: a write would come too late to find out. */
export function isWritable(sqlite: Sqlite.Database): boolean {
  const { name, readonly, memory } = sqlite;
  if (memory || readonly) return !readonly;
  try {
    accessSync(name, constants.W_OK);
    // To the superuser every file is writable; one that nobody may write was meant to stay as it is.
    return (statSync(name).mode & ANYBODY_WRITES) !== 0;
  } catch {
    return false;
  }
}

/** Whether an error says that another connection writes just now. */
export function isBusy(error: unknown): boolean {
  return error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY");
}

/** Gives a connection the functions that queries use. */
function addFunctions(sqlite: Sqlite.Database): void {
  sqlite.function("folded", { deterministic: true }, (text: unknown) => folded(String(text ?? "")));
}

function prepareConnection(sqlite: Sqlite.Database): void {
  addFunctions(sqlite);
  sqlite.pragma(`busy_timeout = ${BUSY_TIMEOUT_MS}`);
  if (sqlite.pragma("quick_check", { simple: true }) !== "ok") {
    throw new DatabaseFileError(`${sqlite.name} is damaged. Restore a backup.`);
  }
  sqlite.pragma("journal_mode = WAL");
  assertPragma(sqlite, "journal_mode", sqlite.memory ? "memory" : "wal");
  sqlite.pragma("synchronous = FULL");
  assertPragma(sqlite, "synchronous", SYNCHRONOUS_FULL);
  // What is erased is erased in the file too, not only no longer shown.
  sqlite.pragma("secure_delete = ON");
  sqlite.pragma("foreign_keys = ON");
  assertPragma(sqlite, "foreign_keys", 1);
  sqlite.pragma(`wal_autocheckpoint = ${PAGES_IN_LOG_AT_MOST}`);
}

function assertPragma(sqlite: Sqlite.Database, name: string, wanted: string | number): void {
  const found = sqlite.pragma(name, { simple: true });
  if (found !== wanted)
    throw new DatabaseFileError(`${sqlite.name}: ${name} is ${String(found)} and must be ${wanted}`);
}

function freeBytes(file: string): number {
  const { bavail, bsize } = statfsSync(dirname(file));
  return bavail * bsize;
}
