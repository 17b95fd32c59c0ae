import { createHash } from "node:crypto";
import { DatabaseFileError } from "../database-file-error.ts";
import type { MovedRow, MovedTable, Side, Target } from "./side.ts";

/** Rows that are written together: what a kill takes back, and what memory holds. */
const ROWS_AT_ONCE = 500;

/** Copies every row that the target has not got yet: what was cut off goes on where it was. */
export async function copyTables(from: Side, to: Target, tables: readonly MovedTable[]): Promise<void> {
  for (const table of tables) {
    const columns = await sharedColumns(from, to, table.name);
    let after = await to.lastKey(table);
    for (;;) {
      const rows = await from.rowsAfter(table, columns, after, ROWS_AT_ONCE);
      if (rows.length === 0) break;
      await to.write(table, columns, rows);
      after = keyOf(rows.at(-1) ?? [], table, columns);
    }
  }
}

/**
 * SHA-256, in hex, of everything in some tables: one line of JSON a row, in order of the tables' keys. Databases with the same
 * values have the same, whichever engines they are.
 */
export async function digestOf(side: Side, tables: readonly MovedTable[]): Promise<string> {
  const digest = createHash("sha256");
  for (const table of tables) {
    const columns = await side.columns(table.name);
    digest.update(`${JSON.stringify([table.name, columns])}\n`);
    for (let after: MovedRow | undefined; ; ) {
      const rows = await side.rowsAfter(table, columns, after, ROWS_AT_ONCE);
      if (rows.length === 0) break;
      for (const row of rows) digest.update(`${JSON.stringify(row.map(shown))}\n`);
      after = keyOf(rows.at(-1) ?? [], table, columns);
    }
  }
  return digest.digest("hex");
}

async function sharedColumns(from: Side, to: Side, table: string): Promise<readonly string[]> {
  const [own, others] = [await from.columns(table), await to.columns(table)];
  if (own.join() === others.join()) return own;
  throw new DatabaseFileError(
    `${table} has other columns in the two databases. Bring both to the same version.`,
  );
}

function keyOf(row: MovedRow, { key }: MovedTable, columns: readonly string[]): MovedRow {
  return key.map((name) => row[columns.indexOf(name)]);
}

function shown(value: unknown): unknown {
  return value instanceof Uint8Array ? { bytes: Buffer.from(value).toString("base64") } : value;
}
