import type { Pool } from "pg";
import { query } from "./connection.ts";

const LATEST_HASH = {
  name: "latest_hash",
  text: "SELECT hash FROM events ORDER BY sequence DESC LIMIT 1",
};

/** The mark of a history without events. */
export const NO_EVENTS = "";

/** The hash of the latest event, which covers all events before it. Each question serves all who came before it was asked. */
export function markOf(pool: Pool): () => Promise<string> {
  return shared(async () => {
    const { rows } = await query<{ hash: string }>(pool, LATEST_HASH);
    return rows[0]?.hash ?? NO_EVENTS;
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
