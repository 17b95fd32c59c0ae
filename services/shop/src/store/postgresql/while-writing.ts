import type { Pool, PoolClient } from "pg";
import type { Step } from "../store.ts";
import { UnavailableError } from "../unavailable-error.ts";
import { type Attempt, wasCommitted } from "./attempt.ts";
import type { TableWriters } from "./table-writer.ts";
import { inTransaction, LOCK } from "./transaction.ts";
import { type Writing, writingOn } from "./writing.ts";

type Done<Result> = { readonly result: Result; readonly attempt: Attempt; readonly step: Step | undefined };

/**
 * Does work in a transaction while nobody else writes, in whichever process, with what is written in sets. When the connection is
 * lost at COMMIT, the history says whether it was done. `heard` hears of it once it is.
 */
export async function whileWriting<Result>(
  pool: Pool,
  writers: TableWriters,
  work: (writing: Writing, client: PoolClient) => Promise<Result>,
  heard: (step: Step) => void = () => {},
): Promise<Result> {
  let done: Done<Result> | undefined;
  const hear = ({ result, step }: Done<Result>) => {
    if (step !== undefined) heard(step);
    return result;
  };
  try {
    const committed = await inTransaction(
      pool,
      async (client, begun) => {
        const writing = writingOn(client, writers, begun);
        const result = await work(writing, client);
        const sent = await writing.send();
        const attempt = { head: writing.head(), answer: writing.latestAnswer() };
        done = { result, attempt, step: writing.step() };
        return { result: done, sent };
      },
      [LOCK],
    );
    return hear(committed);
  } catch (error) {
    if (!(error instanceof UnavailableError) || error.code !== "STORE_OUTCOME_UNKNOWN") throw error;
    if (done !== undefined && (await wasCommitted(pool, done.attempt, error))) return hear(done);
    throw new UnavailableError(error);
  }
}
