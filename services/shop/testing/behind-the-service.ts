import { join } from "node:path";
import { onTestFinished } from "vitest";
import { isPostgresql } from "../src/store/open.ts";
import { openPostgresql } from "./behind-postgresql.ts";
import { openSqlite } from "./behind-sqlite.ts";
import type { Column, Database } from "./database.ts";
import { freeSchema, newSchema, serverUnderTest } from "./database-under-test.ts";

/** What somebody does who can open the shop's database without the service. */
export async function behindTheService<Result>(
  { file }: { readonly file: string },
  act: (database: Database) => Promise<Result>,
): Promise<Result> {
  const database = await openDatabase(file);
  try {
    return await act(database);
  } finally {
    await database.close();
  }
}

/** A shop's database, open until it is closed. */
export async function openDatabase(file: string): Promise<Database> {
  return isPostgresql(file) ? openPostgresql(file) : openSqlite(file);
}

/** How many rows there are of something, such as `bits` or `events WHERE by = 'system'`. */
export async function count(shop: { readonly file: string }, what: string): Promise<number> {
  const [row] = await behindTheService(shop, ({ rows }) => rows(`SELECT count(*) AS count FROM ${what}`));
  return Number(row?.["count"]);
}

/** Every row of every table, as text to search. */
export function everyRowOf(shop: { readonly file: string }): Promise<string> {
  return behindTheService(shop, async ({ rows, tables }) => {
    const texts: string[] = [];
    for (const name of await tables()) texts.push(JSON.stringify(await rows(`SELECT * FROM "${name}"`)));
    return texts.join();
  });
}

/** Numbers of bits that the database gives. */
const GIVEN = ["number", "shop_number"];

/** Copies a row, with other values in some columns: SQL, in which a copy may be numbered by what `from` joins. */
export async function copyRow(
  { run, columns }: Pick<Database, "run" | "columns">,
  table: string,
  id: string,
  other: Readonly<Record<string, string>>,
  { from = "", without = [] }: { readonly from?: string; readonly without?: readonly string[] } = {},
): Promise<void> {
  const names = (await columns(table))
    .map(({ name }: Column) => name)
    .filter((name) => !GIVEN.includes(name) && !without.includes(name));
  const values = names.map((name) => other[name] ?? `original."${name}"`);
  const quoted = names.map((name) => `"${name}"`);
  await run(
    `${from} INSERT INTO ${table} (${quoted.join()}) SELECT ${values.join()} FROM ${table} AS original${from === "" ? "" : ", numbers"}
     WHERE original.id = '${id}'`,
  );
}

/** The numbers from 1 up to another, as the rows `numbers (n)`. */
export function numbersTo(most: number): string {
  return `WITH RECURSIVE numbers (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM numbers WHERE n < ${most})`;
}

/** Changes the JSON that a column of some rows holds. */
export async function changeJson(
  { rows, run }: Pick<Database, "rows" | "run">,
  [table, column]: readonly [table: string, column: string],
  // biome-ignore lint/suspicious/noExplicitAny: what a test changes it knows.
  change: (value: any) => void,
  { key = "id", where = "TRUE" }: { readonly key?: string; readonly where?: string } = {},
): Promise<void> {
  for (const row of await rows(`SELECT "${key}" AS key, "${column}" AS text FROM ${table} WHERE ${where}`)) {
    const value: unknown = JSON.parse(String(row["text"]));
    change(value);
    await run(`UPDATE ${table} SET "${column}" = $1 WHERE "${key}" = $2`, [
      JSON.stringify(value),
      row["key"],
    ]);
  }
}

/** A copy of a shop's database: a file in a folder, or a schema that is gone after the test. */
export async function copyOf(shop: { readonly file: string }, folder: string): Promise<string> {
  const database = newDatabase(folder);
  await behindTheService(shop, ({ copyTo }) => copyTo(database));
  return database;
}

/** Where a new shop's database can be: a file in a folder, or a schema that is gone after the test. */
export function newDatabase(folder: string): string {
  const server = serverUnderTest();
  if (server === undefined) return join(folder, "shop.sqlite");
  const url = newSchema(server);
  onTestFinished(() => freeSchema(url));
  return url;
}
