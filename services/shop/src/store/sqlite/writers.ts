import type { Database as Sqlite } from "better-sqlite3";
import type { Kept, Kind } from "../kind.ts";
import type { Change } from "../port.ts";
import type { RawRow } from "../readers.ts";
import { recordDigest } from "../record-digest.ts";
import { columnValues, writtenColumns } from "../written-columns.ts";

/** The prepared statements that write one kind of record. */
export type Writer = {
  readonly insert: (row: object) => void;
  /** Writes the named fields, or all when it is not known which ones changed. */
  readonly update: (id: string, row: object, changed?: readonly string[]) => void;
  readonly remove: (id: string) => void;
  readonly currentVersion: (id: string) => number | undefined;
  /** Digest of the record as it is kept now. */
  readonly digest: (id: string) => string | undefined;
  /** Names of the columns that are computed from a record. */
  readonly queryColumns: readonly string[];
};

/** The query columns of a record; undefined for a kind that has none. */
export type ColumnsOf = (kind: Kind, record: Kept) => object | undefined;

export type Writers = (kind: Kind) => Writer;

/** The writers of these kinds. */
export function recordWriters(sqlite: Sqlite, kinds: readonly Kind[]): Writers {
  const writers = new Map(kinds.map((kind) => [kind.type, writerOf(sqlite, kind)]));
  return ({ type }) => {
    const writer = writers.get(type);
    if (writer === undefined) throw new Error(`the store has no kind ${type}`);
    return writer;
  };
}

/** Applies one change. Its expected version has been checked in the same transaction. */
export function applyChange(writers: Writers, change: Change, columnsOf: ColumnsOf): void {
  const writer = writers(change.kind);
  switch (change.action) {
    case "create":
      writer.insert(rowOf(change, columnsOf));
      break;
    case "replace": {
      const changed = change.changed && [...change.changed, ...writer.queryColumns];
      writer.update(change.record.id, rowOf(change, columnsOf), changed);
      break;
    }
    case "amend":
      writer.update(change.id, change.fields, Object.keys(change.fields));
      break;
    case "remove":
      writer.remove(change.id);
      break;
  }
}

/** A record with the columns that only its queries need. */
function rowOf(
  { kind, record, queryColumns }: Extract<Change, { readonly record: object }>,
  columnsOf: ColumnsOf,
): object {
  const computed = queryColumns ?? columnsOf(kind, record);
  return computed === undefined ? record : Object.assign({}, record, computed);
}

function writerOf(sqlite: Sqlite, kind: Kind): Writer {
  const { tableName, queryColumns: types = {} } = kind;
  const columns = writtenColumns(kind);
  const names = columns.map(([, column]) => `"${column.name}"`);
  const insert = sqlite.prepare(
    `INSERT INTO ${tableName} (${names.join(", ")}) VALUES (${names.map(() => "?").join(", ")})`,
  );
  const updates = new Map<string, ReturnType<typeof updateOf>>();

  function updateOf(fields: readonly string[] | undefined) {
    const written = fields === undefined ? columns : columns.filter(([field]) => fields.includes(field));
    const set = written.map(([, column]) => `"${column.name}" = ?`).join(", ");
    return { statement: sqlite.prepare(`UPDATE ${tableName} SET ${set} WHERE id = ?`), written };
  }

  const remove = sqlite.prepare(`DELETE FROM ${tableName} WHERE id = ?`);
  const version = sqlite.prepare<[string], number>(`SELECT version FROM ${tableName} WHERE id = ?`).pluck();
  const own = [...kind.columns.values()].map(({ name }) => `"${name}"`).join(", ");
  const kept = sqlite.prepare<[string], RawRow>(`SELECT ${own} FROM ${tableName} WHERE id = ?`).raw();
  return {
    queryColumns: columns.flatMap(([field]) => (field in types ? [field] : [])),
    insert: (row) => void insert.run(columnValues(columns, row)),
    update: (id, row, changed) => {
      const shape = changed?.join() ?? "";
      const update = updates.get(shape) ?? updateOf(changed);
      updates.set(shape, update);
      update.statement.run(...columnValues(update.written, row), id);
    },
    remove: (id) => void remove.run(id),
    currentVersion: (id) => version.get(id),
    digest: (id) => {
      const row = kept.get(id);
      return row && recordDigest(kind, row);
    },
  };
}
