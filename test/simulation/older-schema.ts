import { copyFileSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { KINDS, migrate, openShopStore } from "@rimwise/shop";
import Sqlite from "better-sqlite3";
import { movedTables } from "../../services/shop/src/store/move/tables.ts";
import { isPostgresql, readAddress } from "../../services/shop/src/store/postgresql/address.ts";
import { migrate as migratePostgresql } from "../../services/shop/src/store/postgresql/migrate.ts";
import { openPool } from "../../services/shop/src/store/postgresql/pool.ts";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import type { Database, Row } from "../../services/shop/testing/database.ts";

const MIGRATIONS = new URL("../../migrations/", import.meta.url).pathname;
const AT = new Date("2026-03-02T08:00:00.000Z");

/**
 * The last one before the history records the signing keys. A history that does cannot have been there at an earlier level: the keys were
 * in a file then, and to take them over is an event.
 */
const EARLIEST = "0026";

/**
 * The levels that a shop may be taken back to, each by the name of its last migration: every one that both engines have known since. From
 * there on whatever a later migration makes is empty in the simulated shop or filled by the way forward; the comparison says when it is not.
 * Only SQLite has the migrations before; `test/upgrades` goes through them, from the first release on.
 */
export const OLDER_LEVELS: readonly string[] = readdirSync(join(MIGRATIONS, "postgresql"))
  .filter((name) => name.endsWith(".sql") && name.slice(0, 4) >= EARLIEST)
  .sort()
  .slice(0, -1);

/** What each process has at a moment: nothing of it is missed after a restart. The ledger of the migrations is made again. */
const NOT_KEPT = ["migrations", "leases", "request_counts", "writing"];

/** As a migration leaves them that has them computed again at the start, and as a program of before derived them. */
const OTHERWISE_DERIVED =
  "UPDATE bits SET words = '', facets = '', ceiling_rpm = 1, guide_rpm = 1; DELETE FROM derivations";

const TABLES = movedTables(KINDS);

type Rows = ReadonlyMap<string, readonly Row[]>;

/**
 * Takes a shop's database back to an earlier level, with everything that this level has a place for, and starts this program on it. Throws
 * when anything is not as it was before: what was lost on the way back the migrations and the start must have made again.
 */
export async function takesUpOlderSchema(database: string, level: string): Promise<void> {
  const before = await everyRow(database);
  await makeEmpty(database, level);
  await behindTheService({ file: database }, async (behind) => {
    for (const { name, assigned } of TABLES) await putBack(behind, name, before.get(name) ?? [], assigned);
    if (isPostgresql(database))
      await behind.run("SELECT setval(pg_get_serial_sequence('bits', 'number'), max(number)) FROM bits");
    await behind.run(OTHERWISE_DERIVED);
  });
  await (await openShopStore(database)).close();
  const after = await everyRow(database);
  for (const [table, rows] of before) {
    const fault = whatIsLost(table, rows, after.get(table) ?? []);
    if (fault !== undefined) throw new Error(`started after ${level}, ${table} has ${fault}`);
  }
}

/** The first thing that is not as it was; undefined when everything is. */
function whatIsLost(table: string, before: readonly Row[], after: readonly Row[]): string | undefined {
  const { key = [] } = TABLES.find(({ name }) => name === table) ?? {};
  const keyOf = (row: Row) => JSON.stringify(key.map((name) => row[name]));
  const now = new Map(after.map((row) => [keyOf(row), row]));
  for (const was of before) {
    const is = now.get(keyOf(was));
    if (is === undefined) return `lost ${JSON.stringify(was)}`;
    const other = Object.keys({ ...was, ...is }).find(
      (name) => JSON.stringify(was[name]) !== JSON.stringify(is[name]),
    );
    if (other !== undefined)
      return `${keyOf(was)} with ${other} ${JSON.stringify(is[other])}, not ${JSON.stringify(was[other])}`;
  }
  return after.length === before.length ? undefined : `${after.length} rows, not ${before.length}`;
}

/** Everything that a shop must still have after a restart. */
function everyRow(database: string): Promise<Rows> {
  return behindTheService({ file: database }, async ({ tables, rows }) => {
    const found = new Map<string, readonly Row[]>();
    for (const table of await tables())
      if (!NOT_KEPT.includes(table)) found.set(table, await rows(`SELECT * FROM "${table}"`));
    return found;
  });
}

/** Makes a new database in the place of another, with the migrations up to one. */
async function makeEmpty(database: string, level: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-migrations-"));
  try {
    const own = join(MIGRATIONS, isPostgresql(database) ? "postgresql" : "sqlite");
    for (const name of readdirSync(own).filter((each) => each.endsWith(".sql") && each <= level))
      copyFileSync(join(own, name), join(folder, name));
    await (isPostgresql(database) ? makeEmptySchema(database, folder) : makeEmptyFile(database, folder));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function makeEmptyFile(file: string, migrations: string): void {
  for (const each of [file, `${file}-wal`, `${file}-shm`]) rmSync(each, { force: true });
  const sqlite = new Sqlite(file);
  migrate(sqlite, migrations, AT);
  sqlite.close();
}

async function makeEmptySchema(url: string, migrations: string): Promise<void> {
  const address = readAddress(url);
  const pool = openPool(address);
  try {
    await pool.query("SET client_min_messages = warning");
    await pool.query(`DROP SCHEMA "${address.schema}" CASCADE`);
    await migratePostgresql(pool, address.schema, migrations, AT);
  } finally {
    await pool.end();
  }
}

/** Writes what a table has a place for. A number that the database gives to a new row is made what it was. */
async function putBack(
  { columns, run, tables }: Database,
  table: string,
  rows: readonly Row[],
  assigned: string | undefined,
): Promise<void> {
  if (!(await tables()).includes(table)) return;
  const names = (await columns(table)).map(({ name }) => name);
  const places = names.map((_, index) => `$${index + 1}`);
  const insert = `INSERT INTO "${table}" (${names.map((name) => `"${name}"`).join()}) VALUES (${places.join()})`;
  for (const row of rows) {
    await run(
      insert,
      names.map((name) => row[name]),
    );
    if (assigned !== undefined && names.includes(assigned))
      await run(`UPDATE "${table}" SET "${assigned}" = $1 WHERE id = $2`, [row[assigned], row["id"]]);
  }
}
