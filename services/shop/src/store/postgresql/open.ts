import { fileURLToPath } from "node:url";
import type { Pool } from "pg";
import { findAnswer } from "../kept-answers.ts";
import type { Shape, Store, StoreHealth } from "../store.ts";
import { type Address, readAddress } from "./address.ts";
import { answersFrom } from "./answer.ts";
import type { Parts } from "./apply.ts";
import { openBell } from "./bell-between.ts";
import { openCommit } from "./commit.ts";
import { completeRecords, deriveAgain } from "./complete.ts";
import { requireFit } from "./facts.ts";
import { isMigrated, migrate, requireShop } from "./migrate.ts";
import { openPool } from "./pool.ts";
import { tableWriters } from "./table-writer.ts";

export const MIGRATIONS_FOLDER = fileURLToPath(
  new URL("../../../../../migrations/postgresql", import.meta.url),
);

/**
 * Opens the database of a shop at a PostgreSQL URL, checked and migrated. Throws when it cannot be reached, is newer than this
 * program, or would not keep what it acknowledges.
 */
export async function openPostgresqlStore(
  url: string,
  shape: Shape,
  now: () => Date = () => new Date(),
): Promise<Store> {
  const address = readAddress(url);
  const pool = openPool(address);
  try {
    await requireFit(pool);
    await migrate(pool, address.schema, MIGRATIONS_FOLDER, now());
    return await storeOn(pool, address, shape, now().toISOString());
  } catch (error) {
    await pool.end();
    throw error;
  }
}

/** Whether the shop at a URL is at this program's level. Throws when there is none, or one that is newer. */
export async function isShopAtLevel(url: string): Promise<boolean> {
  const address = readAddress(url);
  const pool = openPool(address);
  try {
    await requireFit(pool);
    await requireShop(pool, address.schema);
    return await isMigrated(pool, MIGRATIONS_FOLDER);
  } finally {
    await pool.end();
  }
}

async function storeOn(pool: Pool, address: Address, shape: Shape, at: string): Promise<Store> {
  const parts: Parts = { writers: tableWriters(shape.kinds), rules: shape.rules, computed: shape.computed };
  await completeRecords(pool, shape, parts);
  await deriveAgain(pool, shape, parts, at);
  const answer = answersFrom(pool);
  const commit = openCommit(pool, parts);
  const { bell, committed, close } = await openBell(address);
  return {
    commit: async (batch) => {
      const result = await commit(batch);
      if (result.kind === "committed" && batch.changes.length > 0) committed();
      return result;
    },
    answer,
    findAnswer: (scope, idempotencyKey) => answer(findAnswer(scope, idempotencyKey)),
    health: () => healthOf(pool),
    // Another process may commit at any time, and only a question to the server would tell.
    mark: undefined,
    bell,
    copyTo: undefined,
    close: async () => {
      await close();
      if (!pool.ending) await pool.end();
    },
  };
}

/** How much room the server's disk has it does not say: a full one is seen at the first write. */
async function healthOf(pool: Pool): Promise<StoreHealth> {
  try {
    const { rows } = await pool.query<{ writable: number }>(
      "SELECT NOT pg_is_in_recovery() AND NOT current_setting('default_transaction_read_only')::boolean AS writable",
    );
    const migrations = await isMigrated(pool, MIGRATIONS_FOLDER).catch(() => false);
    return { database: true, migrations, disk: true, writable: rows[0]?.writable === 1 };
  } catch {
    return { database: false, migrations: false, disk: false, writable: false };
  }
}
