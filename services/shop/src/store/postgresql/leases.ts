import { randomUUID } from "node:crypto";
import type { Pool } from "pg";
import type { Leases } from "../leases.ts";
import { query } from "./connection.ts";

/** The server's clock: those of the processes may differ. */
export const NOW_MS = "(extract(epoch FROM clock_timestamp()) * 1000)::bigint";

/** Leases among the processes of a shop, wherever they run. */
export function leasesIn(pool: Pool): Leases {
  const holder = randomUUID();
  return {
    take: async (name, forMs) => {
      const { rowCount } = await query(pool, {
        text: `INSERT INTO leases (name, holder, expires_at_ms) VALUES ($1, $2, ${NOW_MS} + $3)
         ON CONFLICT (name) DO UPDATE SET holder = excluded.holder, expires_at_ms = excluded.expires_at_ms
         WHERE leases.holder = excluded.holder OR leases.expires_at_ms <= ${NOW_MS}`,
        values: [name, holder, forMs],
      });
      return rowCount === 1;
    },
    giveBack: async (name) => {
      const text = "DELETE FROM leases WHERE name = $1 AND holder = $2";
      await query(pool, { text, values: [name, holder] });
    },
  };
}
