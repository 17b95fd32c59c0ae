import type { PoolClient } from "pg";
import { subjectOf } from "../changes.ts";
import type { Kept, Kind } from "../kind.ts";
import type { Change } from "../port.ts";
import type { RawRow } from "../readers.ts";
import { columnValues, type WrittenColumn, writtenColumns } from "../written-columns.ts";

/** The statements that write one kind of record. What is written comes back as the row that is kept. */
export type Writer = {
  readonly insert: (client: PoolClient, row: object) => Promise<RawRow | undefined>;
  /** Writes the named fields, or all when it is not known which ones changed. */
  readonly update: (
    client: PoolClient,
    id: string,
    row: object,
    changed?: readonly string[],
  ) => Promise<RawRow | undefined>;
  readonly remove: (client: PoolClient, id: string) => Promise<void>;
  readonly currentVersion: (client: PoolClient, id: string) => Promise<number | undefined>;
  /** Names of the columns that are computed from a record. */
  readonly queryColumns: readonly string[];
};

export type Writers = (kind: Kind) => Writer;

/** The query columns of a record; undefined for a kind that has none. */
export type ColumnsOf = (kind: Kind, record: Kept) => Promise<object | undefined>;

/** The writers of these kinds. */
export function recordWriters(kinds: readonly Kind[]): Writers {
  const writers = new Map(kinds.map((kind) => [kind.type, writerOf(kind)]));
  return ({ type }) => {
    const writer = writers.get(type);
    if (writer === undefined) throw new Error(`the store has no kind ${type}`);
    return writer;
  };
}

/** Applies one change, whose expected version has been checked in the same transaction. Gives the row that is kept then, if any. */
export async function applyChange(
  client: PoolClient,
  writers: Writers,
  change: Change,
  columnsOf: ColumnsOf,
): Promise<RawRow | undefined> {
  const writer = writers(change.kind);
  switch (change.action) {
    case "create":
      return writer.insert(client, await rowOf(change, columnsOf));
    case "replace": {
      const changed = change.changed && [...change.changed, ...writer.queryColumns];
      return writer.update(client, change.record.id, await rowOf(change, columnsOf), changed);
    }
    case "amend":
      return writer.update(client, change.id, change.fields, Object.keys(change.fields));
    case "remove":
      await writer.remove(client, subjectOf(change));
      return undefined;
  }
}

/** A record with the columns that only its queries need. */
async function rowOf(
  { kind, record, queryColumns }: Extract<Change, { readonly record: object }>,
  columnsOf: ColumnsOf,
): Promise<object> {
  const computed = queryColumns ?? (await columnsOf(kind, record));
  return computed === undefined ? record : Object.assign({}, record, computed);
}

function writerOf(kind: Kind): Writer {
  const { tableName, queryColumns: types = {} } = kind;
  const columns = writtenColumns(kind);
  const own = [...kind.columns.values()].map(({ name }) => `"${name}"`).join(", ");
  const names = columns.map(([, { name }]) => `"${name}"`).join(", ");
  const places = columns.map((_, index) => `$${index + 1}`).join(", ");
  const insert = `INSERT INTO ${tableName} (${names}) VALUES (${places}) RETURNING ${own}`;

  async function written(client: PoolClient, text: string, values: unknown[]): Promise<RawRow | undefined> {
    const { rows } = await client.query<unknown[]>({ text, values, rowMode: "array" });
    return rows[0];
  }

  function updateOf(set: readonly WrittenColumn[]): string {
    const assigned = set.map(([, { name }], index) => `"${name}" = $${index + 2}`).join(", ");
    return `UPDATE ${tableName} SET ${assigned} WHERE id = $1 RETURNING ${own}`;
  }

  return {
    queryColumns: columns.flatMap(([field]) => (field in types ? [field] : [])),
    insert: (client, row) => written(client, insert, columnValues(columns, row)),
    update: (client, id, row, changed) => {
      const set = changed === undefined ? columns : columns.filter(([field]) => changed.includes(field));
      return written(client, updateOf(set), [id, ...columnValues(set, row)]);
    },
    remove: async (client, id) => void (await client.query(`DELETE FROM ${tableName} WHERE id = $1`, [id])),
    currentVersion: async (client, id) => {
      const text = `SELECT version FROM ${tableName} WHERE id = $1`;
      return (await client.query<{ version: number }>(text, [id])).rows[0]?.version;
    },
  };
}
