import type { Pool, PoolClient, QueryConfig, QueryResult } from "pg";
import { UnavailableError } from "../unavailable-error.ts";
import { connectionOf } from "./connection.ts";
import { inOrder } from "./in-order.ts";
import type { Writing } from "./writing.ts";

const BEGIN = "BEGIN ISOLATION LEVEL READ COMMITTED";
/** Whoever writes holds this row. */
export const LOCK = { name: "lock_for_writing", text: "SELECT 1 FROM writing FOR UPDATE" };

/** What a transaction comes to, with statements that were sent and not waited for. */
type Ending<Result> = { readonly result: Result; readonly sent?: readonly Promise<unknown>[] };

/**
 * Does work in a transaction: all of it or, when it throws, nothing. Each statement sees what was committed before it began.
 * Throws an UnavailableError when the connection is lost; when that is at the COMMIT, it says so: nobody knows yet whether it was done.
 */
export async function inTransaction<Result>(
  pool: Pool,
  work: (client: PoolClient, begun: Promise<unknown>) => Promise<Ending<Result>>,
  first: readonly QueryConfig[] = [],
): Promise<Result> {
  const client = await connectionOf(pool);
  let broken: Error | undefined;
  let isCommitting = false;
  try {
    // Sent together with the first questions: it costs no wait of its own.
    const begun = inOrder([{ text: BEGIN }, ...first].map((statement) => client.query(statement)));
    const [, { result, sent = [] }] = await inOrder<[unknown, Ending<Result>]>([begun, work(client, begun)]);
    isCommitting = true;
    const [, { command }] = await inOrder<[unknown, QueryResult]>([inOrder(sent), client.query("COMMIT")]);
    // The server answers so to the COMMIT of a transaction that failed before.
    if (command !== "COMMIT") throw new Error(`the server answered ${command} to COMMIT`);
    isCommitting = false;
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

/** Does a part of a transaction: all of it or, when it throws, nothing, and the rest goes on. */
export async function inPart(client: PoolClient, writing: Writing, work: () => Promise<void>): Promise<void> {
  await writing.settle();
  const before = writing.head();
  await client.query("SAVEPOINT part");
  try {
    await work();
    await writing.settle();
    await client.query("RELEASE SAVEPOINT part");
  } catch (error) {
    await client.query("ROLLBACK TO SAVEPOINT part");
    await client.query("RELEASE SAVEPOINT part");
    writing.goBack(before);
    throw error;
  }
}
