import { randomUUID } from "node:crypto";
import pg from "pg";
import { type Bell, newBell } from "../bell.ts";
import type { Address } from "./address.ts";
import type { Lag } from "./measures.ts";
import { bePresent } from "./presence.ts";

/** Others hear of what is committed at most so often: telling them in each transaction made commits slower. */
const TELL_EVERY_MS = 50;
/** After a lost connection it is tried again so often. */
const TRY_AGAIN_MS = 1000;
/** And what was not heard is looked for so often. */
const LOOK_EVERY_MS = 1000;
const LATEST = `SELECT max(sequence)::text AS latest,
  (SELECT max(extract(epoch FROM replay_lag))::double precision FROM pg_stat_replication) AS standby FROM events`;

const UNKNOWN: Lag = { roundTripS: undefined, standbyS: undefined };

export type BellBetween = {
  readonly bell: Bell;
  readonly committed: () => void;
  readonly lag: () => Lag;
  readonly close: () => Promise<void>;
};

/**
 * A bell that all processes of a shop hear: here at once, elsewhere by LISTEN and NOTIFY, over a connection of its own beside the
 * pool's.
 */
export async function openBell({ pool, schema }: Address): Promise<BellBetween> {
  const bell = newBell();
  const channel = `rimwise_${schema}`.slice(0, 63);
  const self = randomUUID();
  let listener: pg.Client | undefined;
  let tell: NodeJS.Timeout | undefined;
  let again: NodeJS.Timeout | undefined;
  let latest: string | undefined;
  let lag: Lag = UNKNOWN;
  let isClosed = false;

  async function listen(): Promise<void> {
    // When the server is slow, more is asked before the last has been answered.
    const client = new pg.Client({ ...pool, pipeline: true });
    client.on("notification", ({ payload }) => {
      if (payload !== self) bell.ring();
    });
    client.on("error", () => lose(client));
    client.on("end", () => lose(client));
    try {
      await client.connect();
      await bePresent(client, schema);
      await client.query(`LISTEN "${channel}"`);
    } catch (error) {
      await client.end().catch(() => undefined);
      throw error;
    }
    listener = client;
    if (isClosed) await close();
  }

  function lose(client: pg.Client): void {
    if (listener !== client) return;
    listener = undefined;
    lag = UNKNOWN;
    client.end().catch(() => undefined);
    listenLater();
  }

  function listenLater(): void {
    if (isClosed) return;
    again = setTimeout(() => {
      // What was said meanwhile was not heard.
      listen().then(bell.ring, listenLater);
    }, TRY_AGAIN_MS).unref();
  }

  async function close(): Promise<void> {
    isClosed = true;
    clearTimeout(tell);
    clearTimeout(again);
    clearInterval(looking);
    const client = listener;
    listener = undefined;
    await client?.end().catch(() => undefined);
  }

  /** What was said while nobody listened, or was not said because its process was killed, shows in the table. */
  async function look(): Promise<void> {
    const client = listener;
    if (client === undefined) return;
    const since = performance.now();
    const { rows } = await client.query<{ latest: string; standby: number | null }>(LATEST);
    lag = { roundTripS: (performance.now() - since) / 1000, standbyS: rows[0]?.standby ?? undefined };
    if (rows[0]?.latest === latest) return;
    latest = rows[0]?.latest;
    bell.ring();
  }

  await listen();
  const looking = setInterval(() => void look().catch(() => undefined), LOOK_EVERY_MS).unref();
  return {
    bell,
    committed: () => {
      bell.ring();
      tell ??= setTimeout(() => {
        tell = undefined;
        // If it is lost, those elsewhere hear of the next one, or when they listen again.
        listener?.query("SELECT pg_notify($1, $2)", [channel, self]).catch(() => undefined);
      }, TELL_EVERY_MS).unref();
    },
    lag: () => lag,
    close,
  };
}
