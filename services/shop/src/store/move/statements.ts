import type { MovedTable } from "./side.ts";

/** How an engine writes the place of a value, from 1. */
export type Place = (number: number) => string;

/** The statements that read and write a table, as both engines know them. */
export function selectAfter(
  { name, key }: MovedTable,
  columns: readonly string[],
  isFirst: boolean,
  place: Place,
): string {
  const where = isFirst
    ? ""
    : ` WHERE (${list(key)}) > (${key.map((_, index) => place(index + 1)).join(", ")})`;
  const most = place(isFirst ? 1 : key.length + 1);
  return `SELECT ${list(columns)} FROM "${name}"${where} ORDER BY ${list(key)} LIMIT ${most}`;
}

export function selectLast({ name, key }: MovedTable): string {
  return `SELECT ${list(key)} FROM "${name}" ORDER BY ${key.map((column) => `"${column}" DESC`).join(", ")} LIMIT 1`;
}

export function insertInto({ name }: MovedTable, columns: readonly string[], place: Place): string {
  const places = columns.map((_, index) => place(index + 1)).join(", ");
  return `INSERT INTO "${name}" (${list(columns)}) VALUES (${places})`;
}

/** A number that the database gives to a new row is made what it was. */
export function keepAssigned({ name }: MovedTable, column: string, place: Place): string {
  return `UPDATE "${name}" SET "${column}" = ${place(1)} WHERE id = ${place(2)}`;
}

/** The mark of a database that is being moved into. */
export const MOVING = "moving";
export const MAKE_MOVING = `CREATE TABLE ${MOVING} (sequence BIGINT, hash TEXT)`;
export const HEAD = "SELECT sequence, hash FROM events ORDER BY sequence DESC LIMIT 1";

export const BEING_MOVED_INTO =
  "A move into this database has not come to its end. Run the same move again, which goes on where it was.";

function list(names: readonly string[]): string {
  return names.map((name) => `"${name}"`).join(", ");
}
