import { setTimeout as wait } from "node:timers/promises";
import type { Pool, PoolClient } from "pg";
import type { ChainHead } from "../head.ts";
import type { KeptAnswer } from "../port.ts";
import { UnavailableError } from "../unavailable-error.ts";
import { inTransaction, LOCK } from "./transaction.ts";

/** What a transaction leaves behind that no other one does: the end of the chain, or without an event a kept answer. */
export type Attempt = { readonly head: ChainHead | undefined; readonly answer: KeptAnswer | undefined };

/** So long it is asked whether it was committed before the caller is told that nobody knows. */
const ASK_FOR_MS = 5000;
const ASK_AGAIN_MS = 100;

/**
 * Whether a transaction was committed whose connection was lost at its COMMIT. The chain answers exactly: an event's hash covers the
 * event and all before it. Asked while nobody else writes, so that the lost transaction is over, whichever way. Throws the error
 * of the loss when the database stays away.
 */
export async function wasCommitted(pool: Pool, attempt: Attempt, lost: unknown): Promise<boolean> {
  for (const giveUpAt = performance.now() + ASK_FOR_MS; ; ) {
    try {
      return await inTransaction(
        pool,
        async (client, begun) => {
          // Each statement sees what was committed when it begins: this one must begin with the lock.
          await begun;
          return { result: await isThere(client, attempt) };
        },
        [LOCK],
      );
    } catch (error) {
      if (performance.now() > giveUpAt) throw lost;
      if (!(error instanceof UnavailableError) && !isGoingDown(error)) throw lost;
      await wait(ASK_AGAIN_MS);
    }
  }
}

async function isThere(client: PoolClient, { head, answer }: Attempt): Promise<boolean> {
  if (head === undefined && answer === undefined) return false;
  const { rows } =
    head !== undefined
      ? await client.query("SELECT 1 FROM events WHERE sequence = $1 AND hash = $2", [
          head.sequence,
          head.hash,
        ])
      : await client.query(
          "SELECT 1 FROM answers WHERE scope = $1 AND idempotency_key = $2 AND fingerprint = $3 AND expires_at = $4",
          [answer?.scope, answer?.idempotencyKey, answer?.fingerprint, answer?.expiresAt],
        );
  return rows.length === 1;
}

/** The server says so itself while it stops and starts (PostgreSQL's manual, appendix A, class 57). */
function isGoingDown(error: unknown): boolean {
  return error instanceof Error && "code" in error && String(error.code).startsWith("57P");
}
