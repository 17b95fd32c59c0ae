import { fileURLToPath } from "node:url";
import type { Pool } from "pg";
import { findAnswer } from "../kept-answers.ts";
import { levelOf } from "../migrations.ts";
import type { Shape, Step, Store, StoreHealth } from "../store.ts";
import { type Address, readAddress } from "./address.ts";
import { answersFrom } from "./answer.ts";
import type { Parts } from "./apply.ts";
import { openBell } from "./bell-between.ts";
import { openCommit } from "./commit.ts";
import { completeRecords, deriveAgain } from "./complete.ts";
import { query } from "./connection.ts";
import { requireFit } from "./facts.ts";
import { leasesIn } from "./leases.ts";
import { markOf } from "./mark.ts";
import { measuresOf } from "./measures.ts";
import { isMigrated, migrate, requireShop, requireUsableBy } from "./migrate.ts";
import { openPatientPool, openPool } from "./pool.ts";
import { exchangeThrough } from "./request-totals.ts";
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
  const parts: Parts = { writers: tableWriters(shape.kinds), rules: shape.rules, computed: shape.computed };
  const patient = openPatientPool(address);
  try {
    await requireFit(patient);
    await migrate(patient, address.schema, MIGRATIONS_FOLDER, now());
    await completeRecords(patient, shape, parts);
    await deriveAgain(patient, shape, parts, now().toISOString());
  } finally {
    await patient.end();
  }
  const pool = openPool(address);
  try {
    return await storeOn(pool, address, parts);
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

const WRITABLE =
  "SELECT NOT pg_is_in_recovery() AND NOT current_setting('default_transaction_read_only')::boolean AS writable";

async function storeOn(pool: Pool, address: Address, parts: Parts): Promise<Store> {
  const answer = answersFrom(pool);
  const listening: ((step: Step) => void)[] = [];
  const commit = openCommit(pool, parts, (step) => {
    for (const heard of listening) heard(step);
  });
  const { bell, committed, lag, close } = await openBell(address);
  return {
    commit: async (batch) => {
      const result = await commit(batch);
      if (result.kind === "committed" && batch.changes.length > 0) committed();
      return result;
    },
    answer,
    findAnswer: (scope, idempotencyKey) => answer(findAnswer(scope, idempotencyKey)),
    health: () => healthOf(pool),
    mark: markOf(pool),
    hearSteps: (heard) => void listening.push(heard),
    bell,
    leases: leasesIn(pool),
    measures: measuresOf(pool, lag),
    exchangeCounts: exchangeThrough(pool),
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
    const { rows } = await query<{ writable: number }>(pool, WRITABLE);
    const level = await requireUsableBy(pool, MIGRATIONS_FOLDER).then(
      () => ({ migrations: true }),
      (error: unknown) =>
        levelOf(() => {
          throw error;
        }),
    );
    return { database: true, ...level, disk: true, writable: rows[0]?.writable === 1 };
  } catch {
    return { database: false, migrations: false, disk: false, writable: false };
  }
}
