import pg from "pg";
import { DatabaseFileError } from "../database-file-error.ts";
import type { ChainHead } from "../head.ts";
import type { Side, Target } from "../move/side.ts";
import {
  HEAD,
  insertInto,
  keepAssigned,
  MAKE_MOVING,
  MOVING,
  selectAfter,
  selectLast,
} from "../move/statements.ts";
import { type Address, readAddress } from "./address.ts";
import { requireFit } from "./facts.ts";
import { migrate } from "./migrate.ts";
import { MIGRATIONS_FOLDER } from "./open.ts";
import { openPatientPool } from "./pool.ts";
import { takeAlone } from "./presence.ts";

const place = (number: number) => `$${number}`;

/** A shop that is moved from. Throws a DatabaseFileError when a service runs on it. */
export async function openPostgresqlSource(url: string): Promise<Side> {
  const alone = await aloneOn(readAddress(url));
  const { client, end } = await connected(alone);
  // Nobody writes and nothing changes until the move has ended, should a service come back that had lost its connection.
  await client.query("BEGIN ISOLATION LEVEL REPEATABLE READ");
  await client.query("SELECT 1 FROM writing FOR UPDATE");
  return sideOf(client, end);
}

/** A schema that is moved into: an empty one, or one that the same move was cut off in. Throws a DatabaseFileError for any other. */
export async function openPostgresqlTarget(
  url: string,
  head: ChainHead | undefined,
  now: Date,
): Promise<Target> {
  const address = readAddress(url);
  const alone = await aloneOn(address);
  const { pool } = alone;
  try {
    const tables = "SELECT tablename AS name FROM pg_tables WHERE schemaname = $1";
    const { rows } = await pool.query<{ name: string }>(tables, [address.schema]);
    const names = rows.map(({ name }) => name);
    if (!names.includes(MOVING)) {
      if (names.length > 0 && !(await isBare(pool, names)))
        throw new DatabaseFileError(`The schema ${address.schema} is not empty. Name a new one.`);
      await migrate(pool, address.schema, MIGRATIONS_FOLDER, now);
      await pool.query(MAKE_MOVING);
      await pool.query(`INSERT INTO ${MOVING} VALUES ($1, $2)`, [head?.sequence ?? null, head?.hash ?? null]);
    }
    const { client, end } = await connected(alone);
    return targetOf(client, end);
  } catch (error) {
    await alone.end();
    throw error;
  }
}

function targetOf(client: pg.PoolClient, end: () => Promise<void>): Target {
  return {
    ...sideOf(client, end),
    movedHead: async () => {
      const found = await client.query<ChainHead>(
        `SELECT sequence, hash FROM ${MOVING} WHERE sequence IS NOT NULL`,
      );
      return found.rows[0];
    },
    write: async (table, columns, rows) => {
      const text = insertInto(table, columns, place);
      const { assigned: number } = table;
      await client.query("BEGIN");
      const written = rows.flatMap((row) => {
        const insert = client.query({ name: `move_${table.name}`, text, values: [...row] });
        if (number === undefined) return [insert];
        const values = [row[columns.indexOf(number)], row[columns.indexOf("id")]];
        return [insert, client.query(keepAssigned(table, number, place), values)];
      });
      await Promise.all(written);
      const { command } = await client.query("COMMIT");
      if (command !== "COMMIT")
        throw new DatabaseFileError(`The rows of ${table.name} could not be written.`);
    },
    finish: async () => {
      await client.query("BEGIN");
      await client.query(
        "SELECT setval(pg_get_serial_sequence('bits', 'number'), (SELECT coalesce(max(number), 0) + 1 FROM bits), FALSE)",
      );
      await client.query(`DROP TABLE ${MOVING}`);
      await client.query("COMMIT");
    },
  };
}

function sideOf(client: pg.PoolClient, end: () => Promise<void>): Side {
  const rows = async (text: string, values: readonly unknown[] = []) =>
    (await client.query<unknown[]>({ text, values: [...values], rowMode: "array" })).rows;
  return {
    columns: async (table) => {
      const found = await rows(
        `SELECT column_name FROM information_schema.columns
         WHERE table_schema = current_schema() AND table_name = $1 AND is_generated = 'NEVER' ORDER BY column_name`,
        [table],
      );
      return found.map(([name]) => String(name));
    },
    rowsAfter: (table, columns, after, most) =>
      rows(selectAfter(table, columns, after === undefined, place), [...(after ?? []), most]),
    lastKey: async (table) => (await rows(selectLast(table)))[0],
    head: async () => (await client.query<ChainHead>(HEAD)).rows[0],
    close: end,
  };
}

type Alone = { readonly pool: pg.Pool; readonly end: () => Promise<void> };

/** The only access to a shop, for as long as it takes. */
async function aloneOn(address: Address): Promise<Alone> {
  const presence = new pg.Client(address.pool);
  await presence.connect();
  const pool = openPatientPool(address);
  const end = async () => {
    await pool.end();
    await presence.end();
  };
  try {
    await takeAlone(presence, address.schema);
    await requireFit(pool);
    return { pool, end };
  } catch (error) {
    await end();
    throw error;
  }
}

async function connected({ pool, end }: Alone) {
  const client = await pool.connect();
  // The other side may take its time.
  await client.query("SET idle_in_transaction_session_timeout = 0");
  const closed = async () => {
    client.release(true);
    await end();
  };
  return { client, end: closed };
}

/** Whether nothing has happened in it yet: a move was cut off just after it had made the tables. */
async function isBare(pool: pg.Pool, names: readonly string[]): Promise<boolean> {
  if (!names.includes("events")) return false;
  return (await pool.query("SELECT 1 FROM events LIMIT 1")).rowCount === 0;
}
