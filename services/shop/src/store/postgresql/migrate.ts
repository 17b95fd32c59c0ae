import type { Pool, PoolClient } from "pg";
import { type Applied, MigrationError, migrationsIn, missingAmong, requireUsable } from "../migrations.ts";
import { BEING_MOVED_INTO, MOVING } from "../move/statements.ts";
import { query } from "./connection.ts";
import { inTransaction } from "./transaction.ts";

const LEDGER = `CREATE TABLE IF NOT EXISTS migrations (
  name TEXT PRIMARY KEY,
  sha256 TEXT NOT NULL,
  applied_at TEXT NOT NULL
)`;

const APPLIED = "SELECT name, sha256 FROM migrations ORDER BY name";

/** One process migrates at a time, whichever shop of the database it is for. The number is ours. */
const MIGRATING = 7_241_501;

/** Brings the schema to this code's level: all missing files in one transaction, or none. Refuses one that is newer, or not this service's own. */
export async function migrate(pool: Pool, schema: string, folder: string, now: Date): Promise<string[]> {
  const migrations = migrationsIn(folder);
  return inTransaction(pool, async (client) => {
    await client.query("SELECT pg_advisory_xact_lock($1)", [MIGRATING]);
    await client.query(`CREATE SCHEMA IF NOT EXISTS "${schema}"`);
    await requireOwn(client, schema);
    await client.query(LEDGER);
    const missing = missingAmong(migrations, await appliedTo(client));
    for (const { name, sql, sha256 } of missing) {
      await client.query(sql);
      await client.query("INSERT INTO migrations (name, sha256, applied_at) VALUES ($1, $2, $3)", [
        name,
        sha256,
        now.toISOString(),
      ]);
    }
    return { result: missing.map(({ name }) => name) };
  });
}

/** Whether every file in the folder has been applied, and nothing else. */
export async function isMigrated(pool: Pool, folder: string): Promise<boolean> {
  return missingAmong(migrationsIn(folder), await appliedTo(pool)).length === 0;
}

/** Throws a MigrationError when a program with this folder cannot go on with the database as it is by now. */
export async function requireUsableBy(pool: Pool, folder: string): Promise<void> {
  requireUsable(migrationsIn(folder), (await query<Applied>(pool, APPLIED)).rows);
}

/** Throws when there is no shop in the schema. */
export async function requireShop(pool: Pool, schema: string): Promise<void> {
  const { rows } = await pool.query(
    "SELECT 1 FROM pg_tables WHERE schemaname = $1 AND tablename = 'migrations'",
    [schema],
  );
  if (rows.length === 0)
    throw new MigrationError(`There is no shop in the schema ${schema}. Name the shop's own.`);
}

async function requireOwn(client: PoolClient, schema: string): Promise<void> {
  const { rows } = await client.query<{ name: string }>(
    "SELECT table_name AS name FROM information_schema.tables WHERE table_schema = $1",
    [schema],
  );
  if (rows.some(({ name }) => name === MOVING)) throw new MigrationError(BEING_MOVED_INTO);
  if (rows.length > 0 && !rows.some(({ name }) => name === "migrations")) {
    throw new MigrationError(
      "This database is not this service's own. Name another one, or a schema that is empty.",
    );
  }
}

async function appliedTo(asked: Pool | PoolClient): Promise<Applied[]> {
  return (await asked.query<Applied>(APPLIED)).rows;
}
