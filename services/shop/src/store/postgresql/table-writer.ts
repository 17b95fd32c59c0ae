import type { QueryConfig } from "pg";
import type { ColumnType } from "../columns.ts";
import type { Kind } from "../kind.ts";
import type { RawRow } from "../readers.ts";
import { type WrittenColumn, writtenColumns } from "../written-columns.ts";

/** One row that is to be written, and, once it is, what is kept of its record. */
export type Write = { readonly id: string; readonly values: readonly unknown[]; kept?: RawRow };

/** How rows are written by one statement, however many: each column's values come as one array. */
export type Statement = {
  readonly name: string;
  readonly text: string;
  readonly columns: readonly WrittenColumn[];
  /** Whether the ids of the rows come first. */
  readonly isById: boolean;
};

/** The statements that write one kind of record. What is written comes back as the rows that are kept. */
export type TableWriter = {
  readonly kind: Kind;
  readonly insert: Statement;
  /** Writes the named fields, or all when it is not known which ones changed. */
  readonly update: (changed?: readonly string[]) => Statement;
  readonly remove: Statement;
  /** The versions of records by their ids. */
  readonly versions: QueryConfig;
  /** Names of the columns that are computed from a record. */
  readonly queryColumns: readonly string[];
  /** Where the id stands in a row that comes back. */
  readonly idPlace: number;
};

const SQL_TYPES: Readonly<Record<ColumnType, string>> = {
  text: "text",
  "derived-text": "text",
  real: "double precision",
  integer: "bigint",
  "row-number": "bigint",
  "assigned-number": "bigint",
  boolean: "boolean",
  json: "json",
  bytes: "bytea",
};

export function tableWriter(kind: Kind): TableWriter {
  const { tableName, queryColumns: types = {} } = kind;
  const columns = writtenColumns(kind);
  const quoted = (names: readonly WrittenColumn[]) => names.map(([, { name }]) => `"${name}"`);
  const own = [...kind.columns.values()].map(({ name }) => `kept."${name}"`).join(", ");
  const arrays = (of: readonly WrittenColumn[], from: number) =>
    of.map(([field], index) => `$${index + from}::${SQL_TYPES[kind.types.get(field) ?? "text"]}[]`);
  const updates = new Map<string, Statement>();

  function updateOf(changed: readonly string[] | undefined): Statement {
    const set = changed === undefined ? columns : columns.filter(([field]) => changed.includes(field));
    const assigned = quoted(set).map((name) => `${name} = given.${name}`);
    return {
      name: `update_${tableName}_${updates.size}`,
      text: `UPDATE ${tableName} AS kept SET ${assigned.join(", ")}
        FROM unnest($1::text[], ${arrays(set, 2).join(", ")}) AS given (written_id, ${quoted(set).join(", ")})
        WHERE kept.id = given.written_id RETURNING ${own}`,
      columns: set,
      isById: true,
    };
  }

  return {
    kind,
    insert: {
      name: `insert_${tableName}`,
      text: `INSERT INTO ${tableName} AS kept (${quoted(columns).join(", ")})
        SELECT * FROM unnest(${arrays(columns, 1).join(", ")}) RETURNING ${own}`,
      columns,
      isById: false,
    },
    update: (changed) => {
      const shape = changed?.join() ?? "";
      const update = updates.get(shape) ?? updateOf(changed);
      updates.set(shape, update);
      return update;
    },
    remove: {
      name: `remove_${tableName}`,
      text: `DELETE FROM ${tableName} WHERE id = ANY($1::text[])`,
      columns: [],
      isById: true,
    },
    versions: {
      name: `versions_${tableName}`,
      text: `SELECT id, version FROM ${tableName} WHERE id = ANY($1::text[])`,
    },
    queryColumns: columns.flatMap(([field]) => (field in types ? [field] : [])),
    idPlace: [...kind.columns.keys()].indexOf("id"),
  };
}

export type TableWriters = (kind: Kind) => TableWriter;

/** The writers of these kinds. */
export function tableWriters(kinds: readonly Kind[]): TableWriters {
  const writers = new Map(kinds.map((kind) => [kind.type, tableWriter(kind)]));
  return ({ type }) => {
    const writer = writers.get(type);
    if (writer === undefined) throw new Error(`the store has no kind ${type}`);
    return writer;
  };
}
