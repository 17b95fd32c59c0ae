import { randomUUID } from "node:crypto";
import { setImmediate as nextTurn } from "node:timers/promises";
import type { Database as Sqlite } from "better-sqlite3";
import type { Leases } from "../leases.ts";

const NOW_MS = "CAST(unixepoch('subsec') * 1000 AS INTEGER)";

/** Leases among the processes that have a file open. */
export function leasesIn(sqlite: Sqlite): Leases {
  const holder = randomUUID();
  const take = sqlite.prepare(
    `INSERT INTO leases (name, holder, expires_at_ms) VALUES (?, ?, ${NOW_MS} + ?)
     ON CONFLICT (name) DO UPDATE SET holder = excluded.holder, expires_at_ms = excluded.expires_at_ms
     WHERE holder = excluded.holder OR expires_at_ms <= ${NOW_MS}`,
  );
  const giveBack = sqlite.prepare("DELETE FROM leases WHERE name = ? AND holder = ?");

  /** Not as a part of somebody's half-done transaction. */
  async function alone(): Promise<void> {
    while (sqlite.inTransaction) await nextTurn();
  }

  return {
    take: async (name, forMs) => {
      await alone();
      return take.run(name, holder, forMs).changes === 1;
    },
    giveBack: async (name) => {
      await alone();
      if (sqlite.open) giveBack.run(name, holder);
    },
  };
}
