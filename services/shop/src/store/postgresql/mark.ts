import type { Pool } from "pg";
import { FIRST_PREVIOUS_HASH } from "../chain.ts";
import type { Head } from "../next-event.ts";
import { LATEST } from "./append-events.ts";
import { query } from "./connection.ts";

/** The hash of the latest event, which covers all events before it. Each question serves all who came before it was asked. */
export function markOf(pool: Pool): () => Promise<string> {
  return shared(async () => {
    const { rows } = await query<Head>(pool, LATEST);
    return rows[0]?.hash ?? FIRST_PREVIOUS_HASH;
  });
}

/**
 * Asks one question after the other for all who wait: whoever comes while one is under way waits for the next, because what it sees
 * may be older than what they were told.
 */
export function shared<Value>(ask: () => Promise<Value>): () => Promise<Value> {
  let running: Promise<unknown> = Promise.resolve();
  let next: Promise<Value> | undefined;

  async function askAfter(before: Promise<unknown>): Promise<Value> {
    await before.catch(() => undefined);
    next = undefined;
    const answer = ask();
    running = answer;
    return answer;
  }

  return () => {
    next ??= askAfter(running);
    return next;
  };
}
