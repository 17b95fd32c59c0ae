import type { Pool } from "pg";
import type { Stamp } from "../port.ts";
import { all } from "../query.ts";
import type { Shape } from "../store.ts";
import { queryColumnsOf } from "../written-columns.ts";
import { applyAll, computeAgain, type Parts } from "./apply.ts";
import { whileWriting } from "./while-writing.ts";

const KEEP =
  "INSERT INTO derivations VALUES ($1, $2) ON CONFLICT (name) DO UPDATE SET version = excluded.version";

/** Computes for older records what a migration cannot, because SQL does not know how. No event says so: nothing happened. */
export async function completeRecords(pool: Pool, shape: Shape, { writers, computed }: Parts): Promise<void> {
  await whileWriting(pool, writers, async (writing) => {
    for (const { kind, incomplete, complete } of shape.completions) {
      for (const record of await writing.ask(all(incomplete))) {
        const whole = Object.assign({}, record, await writing.ask(complete(record)));
        const columns = await writing.ask(queryColumnsOf(computed, kind, whole));
        writing.update(kind, record.id, Object.assign({}, whole, columns));
        await writing.relieve();
      }
    }
  });
}

/**
 * Derives again what another version of the program derived: query columns, and the changes that follow. In one transaction with
 * the versions, so that a start that is cut off begins again.
 */
export async function deriveAgain(
  pool: Pool,
  { derivations }: Shape,
  parts: Parts,
  at: string,
): Promise<void> {
  const stamp: Stamp = { by: "system", at, requestId: "start" };
  await whileWriting(pool, parts.writers, async (writing, client) => {
    const { rows } = await client.query<{ name: string; version: string }>(
      "SELECT name, version FROM derivations",
    );
    const kept = new Map(rows.map(({ name, version }) => [name, version]));
    const stale = derivations.filter(({ name, version }) => kept.get(name) !== version);
    if (stale.some(({ hasQueryColumns }) => hasQueryColumns))
      await computeAgain(writing, parts.computed, parts.writers);
    for (const { name, version, again } of stale) {
      await applyAll(writing, await writing.ask(again(stamp)), stamp, parts);
      await client.query(KEEP, [name, version]);
    }
  });
}
