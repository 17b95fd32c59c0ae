import { setTimeout as wait } from "node:timers/promises";
import type { Pool } from "pg";
import type { ChainHead } from "../head.ts";
import { findAnswer } from "../kept-answers.ts";
import type { KeptAnswer, WriteBatch } from "../port.ts";
import { UnavailableError } from "../unavailable-error.ts";
import { answerOn } from "./answer.ts";
import { whileWriting } from "./transaction.ts";

/** What a transaction leaves behind that no other one does: the end of the chain, or without an event a kept answer. */
export type Attempt = { head: ChainHead | undefined; answer: KeptAnswer | undefined };

/** So long it is asked whether it was committed before the caller is told that nobody knows. */
const ASK_FOR_MS = 5000;
const ASK_AGAIN_MS = 100;

export function newAttempt(batches: readonly WriteBatch[]): Attempt {
  return { head: undefined, answer: batches.flatMap(({ answer }) => answer ?? []).at(-1) };
}

/**
 * Whether a transaction was committed whose connection was lost at its COMMIT. The chain answers exactly: an event's hash covers the
 * event and all before it. Asked while nobody else writes, so that the lost transaction is over, whichever way. Throws the error
 * of the loss when the database stays away.
 */
export async function wasCommitted(pool: Pool, { head, answer }: Attempt, lost: unknown): Promise<boolean> {
  for (const giveUpAt = performance.now() + ASK_FOR_MS; ; ) {
    try {
      return await whileWriting(pool, async (client) => {
        if (head !== undefined) {
          const text = "SELECT hash FROM events WHERE sequence = $1";
          const { rows } = await client.query<{ hash: string }>(text, [head.sequence]);
          return rows[0]?.hash === head.hash;
        }
        if (answer === undefined) return false;
        const kept = await answerOn(client, findAnswer(answer.scope, answer.idempotencyKey));
        return kept?.fingerprint === answer.fingerprint && kept.expiresAt === answer.expiresAt;
      });
    } catch (error) {
      if (performance.now() > giveUpAt) throw lost;
      if (!(error instanceof UnavailableError) && !isGoingDown(error)) throw lost;
      await wait(ASK_AGAIN_MS);
    }
  }
}

/** The server says so itself while it stops and starts (PostgreSQL's manual, appendix A, class 57). */
function isGoingDown(error: unknown): boolean {
  return error instanceof Error && "code" in error && String(error.code).startsWith("57P");
}
