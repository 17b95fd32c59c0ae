import { eq, getTableColumns, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import type { Change } from "./port.ts";
import type { RecordType } from "./records.ts";
import { RECORD_TABLES } from "./tables.ts";

type Writer = {
  readonly insert: (record: object) => void;
  readonly replace: (record: object) => void;
  readonly remove: (id: string) => void;
  readonly currentVersion: (id: string) => number | undefined;
};

export type Writers = Readonly<Record<RecordType, Writer>>;

/** The columns every record has, spelt out for the type of an insertion. */
const keptValues = {
  id: sql.placeholder("id"),
  version: sql.placeholder("version"),
  name: sql.placeholder("name"),
  createdAt: sql.placeholder("createdAt"),
  updatedAt: sql.placeholder("updatedAt"),
};

/** The prepared statements that write each kind of record. */
export function recordWriters(database: Database): Writers {
  return {
    bit: writerOf(database, RECORD_TABLES.bit),
    router: writerOf(database, RECORD_TABLES.router),
    key: writerOf(database, RECORD_TABLES.key),
    plan: writerOf(database, RECORD_TABLES.plan),
  };
}

/** Applies one change. Its expected version has been checked in the same transaction. */
export function applyChange(writers: Writers, change: Change): void {
  const writer = writers[change.type];
  switch (change.action) {
    case "create":
      writer.insert(change.record);
      break;
    case "replace":
      writer.replace(change.record);
      break;
    case "remove":
      writer.remove(change.id);
      break;
  }
}

function writerOf(database: Database, table: (typeof RECORD_TABLES)[RecordType]): Writer {
  const columns = Object.entries(getTableColumns(table));
  // Each value goes through its column's own encoder, as JSON columns need.
  const given = Object.fromEntries(
    columns.map(([name, column]) => [name, sql`${sql.param(sql.placeholder(name), column)}`]),
  );
  const blank = Object.fromEntries(columns.map(([name]) => [name, null]));
  const isThis = eq(table.id, sql.placeholder("id"));
  const insert = database
    .insert(table)
    .values({ ...given, ...keptValues })
    .prepare();
  const replace = database.update(table).set(given).where(isThis).prepare();
  const remove = database.delete(table).where(isThis).prepare();
  const version = database.select({ version: table.version }).from(table).where(isThis).prepare();
  return {
    insert: (record) => void insert.run({ ...blank, ...record }),
    replace: (record) => void replace.run({ ...blank, ...record }),
    remove: (id) => void remove.run({ id }),
    currentVersion: (id) => version.get({ id })?.version,
  };
}
