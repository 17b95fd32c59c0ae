import type { PoolClient } from "pg";
import { columnValues } from "../written-columns.ts";
import type { Statement, TableWriter, Write } from "./table-writer.ts";

/** Rows of one table that one statement writes together. */
type Run = {
  readonly writer: TableWriter;
  readonly statement: Statement;
  readonly writes: Map<string, Write>;
};

/**
 * Rows that wait to be written in sets. Those of one table are written in the order in which they came; what comes one after the
 * other and is written alike goes together.
 */
export type PendingWrites = {
  readonly add: (writer: TableWriter, statement: Statement, id: string, row: object) => Write;
  /** Names of the tables that rows wait for. */
  readonly tables: () => Iterable<string>;
  readonly count: () => number;
  /** Sends everything without waiting in between. */
  readonly send: (client: PoolClient) => Promise<unknown>[];
  readonly forget: () => void;
};

export function pendingWrites(): PendingWrites {
  const runs = new Map<string, Run[]>();
  let waiting = 0;

  function forget(): void {
    runs.clear();
    waiting = 0;
  }

  return {
    add: (writer, statement, id, row) => {
      const write = { id, values: columnValues(statement.columns, row) };
      const { tableName } = writer.kind;
      const ofTable = runs.get(tableName) ?? [];
      runs.set(tableName, ofTable);
      const last = ofTable.at(-1);
      waiting += 1;
      // One statement writes a row once.
      if (last?.statement === statement && !last.writes.has(id)) last.writes.set(id, write);
      else ofTable.push({ writer, statement, writes: new Map([[id, write]]) });
      return write;
    },
    tables: () => runs.keys(),
    count: () => waiting,
    send: (client) => {
      const sent = [...runs.values()].flat().map((run) => written(client, run));
      forget();
      return sent;
    },
    forget,
  };
}

async function written(client: PoolClient, { writer, statement, writes }: Run): Promise<void> {
  const all = [...writes.values()];
  const arrays = statement.columns.map((_, index) => all.map(({ values }) => values[index]));
  const { rows } = await client.query<unknown[]>({
    name: statement.name,
    text: statement.text,
    values: statement.isById ? [all.map(({ id }) => id), ...arrays] : arrays,
    rowMode: "array",
  });
  for (const row of rows) {
    const write = writes.get(String(row[writer.idPlace]));
    if (write !== undefined) write.kept = row;
  }
}
