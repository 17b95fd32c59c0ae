import type { Pool, PoolClient } from "pg";
import { UnavailableError } from "../unavailable-error.ts";
import { connectionOf } from "./connection.ts";

/**
 * Does work in a transaction: all of it or, when it throws, nothing. Each statement sees what was committed before it began,
 * so whoever holds the lock of `writing` sees everything. Throws an UnavailableError when the connection is lost; when that
 * is at the COMMIT, it says so: nobody knows yet whether it was done.
 */
export async function inTransaction<Result>(
  pool: Pool,
  work: (client: PoolClient) => Promise<Result>,
): Promise<Result> {
  const client = await connectionOf(pool);
  let broken: Error | undefined;
  let isCommitting = false;
  try {
    await client.query("BEGIN ISOLATION LEVEL READ COMMITTED");
    const result = await work(client);
    // The server answers ROLLBACK to the COMMIT of a transaction that failed before.
    isCommitting = true;
    const { command } = await client.query("COMMIT");
    isCommitting = false;
    if (command !== "COMMIT") throw new Error(`the server answered ${command} to COMMIT`);
    return result;
  } catch (error) {
    await client.query("ROLLBACK").catch((lost: Error) => {
      broken = lost;
    });
    if (broken === undefined) throw error;
    throw new UnavailableError(error, isCommitting ? "STORE_OUTCOME_UNKNOWN" : "STORE_UNAVAILABLE");
  } finally {
    client.release(broken);
  }
}

/** The same while nobody else writes, in whichever process. */
export function whileWriting<Result>(
  pool: Pool,
  work: (client: PoolClient) => Promise<Result>,
): Promise<Result> {
  return inTransaction(pool, async (client) => {
    await client.query("SELECT 1 FROM writing FOR UPDATE");
    return work(client);
  });
}

/** Does a part of a transaction: all of it or, when it throws, nothing, and the rest goes on. */
export async function inPart<Result>(client: PoolClient, work: () => Promise<Result>): Promise<Result> {
  await client.query("SAVEPOINT part");
  try {
    const result = await work();
    await client.query("RELEASE SAVEPOINT part");
    return result;
  } catch (error) {
    await client.query("ROLLBACK TO SAVEPOINT part");
    await client.query("RELEASE SAVEPOINT part");
    throw error;
  }
}
