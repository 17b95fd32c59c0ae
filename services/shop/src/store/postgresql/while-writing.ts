import type { Pool, PoolClient } from "pg";
import { UnavailableError } from "../unavailable-error.ts";
import { type Attempt, wasCommitted } from "./attempt.ts";
import type { TableWriters } from "./table-writer.ts";
import { inTransaction, LOCK } from "./transaction.ts";
import { type Writing, writingOn } from "./writing.ts";

/**
 * Does work in a transaction while nobody else writes, in whichever process, with what is written in sets. When the connection is
 * lost at COMMIT, the history says whether it was done.
 */
export async function whileWriting<Result>(
  pool: Pool,
  writers: TableWriters,
  work: (writing: Writing, client: PoolClient) => Promise<Result>,
): Promise<Result> {
  let done: { readonly result: Result; readonly attempt: Attempt } | undefined;
  try {
    return await inTransaction(
      pool,
      async (client, begun) => {
        const writing = writingOn(client, writers, begun);
        const result = await work(writing, client);
        const sent = await writing.send();
        done = { result, attempt: { head: writing.head(), answer: writing.latestAnswer() } };
        return { result, sent };
      },
      [LOCK],
    );
  } catch (error) {
    if (!(error instanceof UnavailableError) || error.code !== "STORE_OUTCOME_UNKNOWN") throw error;
    if (done !== undefined && (await wasCommitted(pool, done.attempt, error))) return done.result;
    throw new UnavailableError(error);
  }
}
