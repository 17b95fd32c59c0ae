import { randomUUID } from "node:crypto";
import type { Pool } from "pg";
import type { ExchangeCounts } from "../store.ts";
import { query } from "./connection.ts";
import { NOW_MS } from "./leases.ts";

/** What is over is forgotten, what this process counted is told, and what others counted of these callers is asked: one round. */
const EXCHANGE = `WITH over AS (DELETE FROM request_counts WHERE expires_at_ms <= ${NOW_MS} AND process = $1),
  told AS (
    INSERT INTO request_counts (caller, process, count, expires_at_ms)
    SELECT caller, $1, count, ${NOW_MS} + left_ms FROM unnest($2::text[], $3::bigint[], $4::bigint[]) AS own (caller, count, left_ms)
    ORDER BY caller
    ON CONFLICT (caller, process) DO UPDATE SET count = excluded.count, expires_at_ms = excluded.expires_at_ms
  )
  SELECT caller, sum(count)::bigint AS count FROM request_counts
  WHERE process <> $1 AND expires_at_ms > ${NOW_MS} AND caller = ANY ($2::text[]) GROUP BY caller`;

const FORGET_EVERY_ROUNDS = 60;
/** What processes that are gone leave behind. */
const FORGET_OTHERS = `DELETE FROM request_counts WHERE expires_at_ms <= ${NOW_MS} - 60000`;

/** Tells the other processes of a shop how many requests of each caller this one has counted, and hears how many they have. */
export function exchangeThrough(pool: Pool): ExchangeCounts {
  const self = randomUUID();
  let rounds = 0;
  return async (own) => {
    const callers = [...own.keys()];
    const counts = [...own.values()];
    const { rows } = await query<{ caller: string; count: number }>(pool, {
      text: EXCHANGE,
      values: [self, callers, counts.map(({ count }) => count), counts.map(({ leftMs }) => leftMs)],
    });
    rounds += 1;
    if (rounds % FORGET_EVERY_ROUNDS === 0) await query(pool, FORGET_OTHERS);
    return new Map(rows.map(({ caller, count }) => [caller, count]));
  };
}
