import type { Pool, PoolClient, QueryResult } from "pg";
import type { Head } from "../next-event.ts";
import { UnavailableError } from "../unavailable-error.ts";
import { connectionOf } from "./connection.ts";
import { inOrder } from "./in-order.ts";
import type { TableWriters } from "./table-writer.ts";
import { type Writing, writingOn } from "./writing.ts";

const BEGIN = "BEGIN ISOLATION LEVEL READ COMMITTED READ WRITE";
/** Whoever writes holds this row. */
const LOCK = "SELECT 1 FROM writing FOR UPDATE";

/** What a transaction comes to, with statements that were sent and not waited for. */
type Ending<Result> = { readonly result: Result; readonly sent?: readonly Promise<unknown>[] };

/**
 * Does work in a transaction: all of it or, when it throws, nothing. Each statement sees what was committed before it began.
 * Throws an UnavailableError when the connection is lost.
 */
export async function inTransaction<Result>(
  pool: Pool,
  work: (client: PoolClient, begun: Promise<unknown>) => Promise<Ending<Result>>,
  first: readonly string[] = [],
): Promise<Result> {
  const client = await connectionOf(pool);
  let broken: Error | undefined;
  try {
    // Sent together with the first questions: it costs no wait of its own.
    const begun = inOrder([BEGIN, ...first].map((statement) => client.query(statement)));
    const [, { result, sent = [] }] = await inOrder<[unknown, Ending<Result>]>([begun, work(client, begun)]);
    const [, { command }] = await inOrder<[unknown, QueryResult]>([inOrder(sent), client.query("COMMIT")]);
    // The server answers so to the COMMIT of a transaction that failed before.
    if (command !== "COMMIT") throw new Error(`the server answered ${command} to COMMIT`);
    return result;
  } catch (error) {
    await client.query("ROLLBACK").catch((lost: Error) => {
      broken = lost;
    });
    throw broken === undefined ? error : new UnavailableError(error);
  } finally {
    client.release(broken);
  }
}

/**
 * The same while nobody else writes, in whichever process, with what is written in sets. When the connection is lost at COMMIT, the
 * history says whether it was done.
 */
export async function whileWriting<Result>(
  pool: Pool,
  writers: TableWriters,
  work: (writing: Writing, client: PoolClient) => Promise<Result>,
): Promise<Result> {
  let done: { readonly result: Result; readonly head: Head } | undefined;
  try {
    return await inTransaction(
      pool,
      async (client, begun) => {
        const writing = writingOn(client, writers, begun);
        const result = await work(writing, client);
        const sent = await writing.send();
        const head = writing.head();
        if (head !== undefined) done = { result, head };
        return { result, sent };
      },
      [LOCK],
    );
  } catch (error) {
    if (error instanceof UnavailableError && done !== undefined && (await isInHistory(pool, done.head)))
      return done.result;
    throw error;
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

/** Whether an event is in the history, once nobody writes any more who did when this was asked. */
async function isInHistory(pool: Pool, { sequence, hash }: Head): Promise<boolean> {
  return inTransaction(
    pool,
    async (client) => {
      const { rows } = await client.query("SELECT 1 FROM events WHERE sequence = $1 AND hash = $2", [
        sequence,
        hash,
      ]);
      return { result: rows.length === 1 };
    },
    [LOCK],
  );
}
