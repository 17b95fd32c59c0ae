import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";
import Sqlite from "better-sqlite3";
import { DatabaseFileError } from "../database-file-error.ts";
import type { Kind } from "../kind.ts";
import { makePrivateFile } from "../private-file.ts";
import { openToRead } from "./connection.ts";

/** The latest event of a history: its sequence and its hash, which covers all events before it. */
export type ChainHead = { readonly sequence: number; readonly hash: string };

/** What a database file holds. */
export type FileContent = {
  /** How many records there are of each kind. */
  readonly records: Readonly<Record<string, number>>;
  readonly events: number;
  /** Absent when there is no event. */
  readonly head?: ChainHead;
  /** Name of the last migration that was applied to it. */
  readonly databaseLevel: string;
};

/** What is enclosed in a copy besides the records, by name. */
export type Enclosed = Readonly<Record<string, string>>;

/** Of a driver that is loaded again, because a check reads every page and would hold up everybody's requests. */
const CHECK = `
const { parentPort, workerData } = require("node:worker_threads");
const Sqlite = require(workerData.driver);
function found() {
  try {
    return new Sqlite(workerData.file, { readonly: true }).pragma("integrity_check(1)", { simple: true });
  } catch (error) {
    return error.message;
  }
}
parentPort.postMessage(found());
`;
const DRIVER = createRequire(import.meta.url).resolve("better-sqlite3");

/**
 * Copies a whole database file of any version, write-ahead log included, as it is at one moment, into a new file that only its
 * owner reads. Others may write meanwhile. Throws when the file is there already or the copy lacks an event that was there
 * before.
 */
export async function copyDatabaseFile(database: string, file: string): Promise<void> {
  makePrivateFile(file);
  const sqlite = openToRead(database);
  let before: ChainHead | undefined;
  try {
    // Held for as long as it takes: else each change of others meanwhile would make the copy begin again.
    sqlite.exec("BEGIN");
    before = headIn(sqlite);
    await sqlite.backup(file);
  } finally {
    sqlite.close();
  }
  const copy = new Sqlite(file);
  try {
    // One file, with no log beside it that a later copy could miss.
    copy.pragma("journal_mode = DELETE");
    const after = headIn(copy);
    if (before !== undefined && (after === undefined || after.sequence < before.sequence)) {
      throw new DatabaseFileError(`The copy in ${file} ends before event ${before.sequence}.`);
    }
  } finally {
    copy.close();
  }
}

/** Puts texts into a copy, in a table of their own. */
export function encloseIn(file: string, enclosed: Enclosed): void {
  const sqlite = new Sqlite(file);
  try {
    sqlite.exec("CREATE TABLE enclosed (name TEXT PRIMARY KEY, text TEXT NOT NULL) STRICT");
    const insert = sqlite.prepare("INSERT INTO enclosed (name, text) VALUES (?, ?)");
    for (const [name, text] of Object.entries(enclosed)) insert.run(name, text);
  } finally {
    sqlite.close();
  }
}

/** The texts that were put into a copy; undefined for a database that is none. */
export function enclosedIn(file: string): Enclosed | undefined {
  const sqlite = openToRead(file);
  try {
    if (!hasTable(sqlite, "enclosed")) return undefined;
    const rows = sqlite.prepare<[], { name: string; text: string }>("SELECT name, text FROM enclosed").all();
    return Object.fromEntries(rows.map(({ name, text }) => [name, text]));
  } finally {
    sqlite.close();
  }
}

/** Takes out of a copy what was put into it: then it is a database again. */
export function removeEnclosed(file: string): void {
  const sqlite = new Sqlite(file);
  try {
    sqlite.exec("DROP TABLE enclosed");
  } finally {
    sqlite.close();
  }
}

/** Counts what a database file holds. */
export function contentOf(file: string, kinds: readonly Kind[]): FileContent {
  const sqlite = openToRead(file);
  const count = (table: string) => Number(sqlite.prepare(`SELECT count(*) FROM "${table}"`).pluck().get());
  try {
    const head = headIn(sqlite);
    const level = sqlite.prepare<[], string>("SELECT max(name) FROM migrations").pluck().get();
    return {
      // An older database has not got every table.
      records: Object.fromEntries(
        kinds
          .filter(({ tableName }) => hasTable(sqlite, tableName))
          .map(({ type, tableName }) => [type, count(tableName)]),
      ),
      events: count("events"),
      ...(head !== undefined && { head }),
      databaseLevel: level ?? "",
    };
  } finally {
    sqlite.close();
  }
}

/** What a field of every record of a kind is in a database file, in order of their ids; nothing of one that is older than the kind. */
export function valuesIn(file: string, kind: Kind, field: string): string[] {
  const sqlite = openToRead(file);
  try {
    if (!hasTable(sqlite, kind.tableName)) return [];
    const { name } = kind.column(field);
    return sqlite.prepare<[], string>(`SELECT "${name}" FROM "${kind.tableName}" ORDER BY id`).pluck().all();
  } finally {
    sqlite.close();
  }
}

/** Reads every page of a file, in a thread of its own. Throws when one is damaged. */
export async function checkPages(file: string): Promise<void> {
  const found = await new Promise<unknown>((resolve, reject) => {
    const worker = new Worker(CHECK, { eval: true, workerData: { driver: DRIVER, file } });
    worker.once("message", resolve).once("error", reject);
  });
  if (found !== "ok") throw new DatabaseFileError(`${file} is damaged, or no database: ${String(found)}.`);
}

/**
 * Does something to a database file that nobody else has open, its log emptied into it beforehand. Throws a DatabaseFileError when
 * somebody has.
 */
export function whileUnused(file: string, act: () => void): void {
  const sqlite = new Sqlite(file, { fileMustExist: true, timeout: 0 });
  try {
    // Only a database that nobody else has open can leave its log.
    sqlite.pragma("journal_mode = DELETE");
    sqlite.exec("BEGIN EXCLUSIVE");
  } catch (cause) {
    sqlite.close();
    if (!isBusy(cause)) throw cause;
    throw new DatabaseFileError(`${file} is in use. Stop the service first.`, { cause });
  }
  try {
    act();
  } finally {
    sqlite.close();
  }
}

function headIn(sqlite: Sqlite.Database): ChainHead | undefined {
  if (!hasTable(sqlite, "events")) return undefined;
  return sqlite
    .prepare<[], ChainHead>("SELECT sequence, hash FROM events ORDER BY sequence DESC LIMIT 1")
    .get();
}

function hasTable(sqlite: Sqlite.Database, name: string): boolean {
  return (
    sqlite.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?").get(name) !== undefined
  );
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY");
}
