import { randomUUID } from "node:crypto";
import type { Pool, PoolClient } from "pg";
import { type Bell, newBell } from "../bell.ts";

/** Others hear of what is committed at most so often: telling them in each transaction made commits slower. */
const TELL_EVERY_MS = 50;
/** After a lost connection it is tried again so often. */
const TRY_AGAIN_MS = 1000;

export type BellBetween = {
  readonly bell: Bell;
  readonly committed: () => void;
  readonly close: () => Promise<void>;
};

/** A bell that all processes of a shop hear: here at once, elsewhere by LISTEN and NOTIFY. */
export async function openBell(pool: Pool, schema: string): Promise<BellBetween> {
  const bell = newBell();
  const channel = `rimwise_${schema}`.slice(0, 63);
  const self = randomUUID();
  let listener: PoolClient | undefined;
  let tell: NodeJS.Timeout | undefined;
  let again: NodeJS.Timeout | undefined;
  let isClosed = false;

  async function listen(): Promise<void> {
    const client = await pool.connect();
    try {
      client.on("notification", ({ payload }) => {
        if (payload !== self) bell.ring();
      });
      client.on("error", () => lose(client));
      await client.query(`LISTEN "${channel}"`);
      listener = client;
    } catch (error) {
      client.release(true);
      throw error;
    }
  }

  function lose(client: PoolClient): void {
    if (listener !== client) return;
    listener = undefined;
    client.release(true);
    listenLater();
  }

  function listenLater(): void {
    if (isClosed) return;
    again = setTimeout(() => {
      // What was said meanwhile was not heard.
      listen().then(bell.ring, listenLater);
    }, TRY_AGAIN_MS).unref();
  }

  await listen();
  return {
    bell,
    committed: () => {
      bell.ring();
      tell ??= setTimeout(() => {
        tell = undefined;
        // If it is lost, those elsewhere hear of the next one, or when they listen again.
        pool.query("SELECT pg_notify($1, $2)", [channel, self]).catch(() => undefined);
      }, TELL_EVERY_MS).unref();
    },
    close: async () => {
      isClosed = true;
      clearTimeout(tell);
      clearTimeout(again);
      const client = listener;
      listener = undefined;
      client?.release(true);
    },
  };
}
