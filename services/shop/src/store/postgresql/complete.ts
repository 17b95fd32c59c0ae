import type { Pool } from "pg";
import type { Stamp } from "../port.ts";
import { all } from "../query.ts";
import type { Shape } from "../store.ts";
import { queryColumnsOf } from "../written-columns.ts";
import { answerOn } from "./answer.ts";
import { applyAll, computeAgain, type Parts } from "./apply.ts";
import { whileWriting } from "./transaction.ts";

const KEEP =
  "INSERT INTO derivations VALUES ($1, $2) ON CONFLICT (name) DO UPDATE SET version = excluded.version";

/** Computes for older records what a migration cannot, because SQL does not know how. No event says so: nothing happened. */
export async function completeRecords(pool: Pool, shape: Shape, { writers, computed }: Parts): Promise<void> {
  await whileWriting(pool, async (client) => {
    for (const { kind, incomplete, complete } of shape.completions) {
      for (const record of await answerOn(client, all(incomplete))) {
        const whole = Object.assign({}, record, await answerOn(client, complete(record)));
        const columns = await answerOn(client, queryColumnsOf(computed, kind, whole));
        await writers(kind).update(client, record.id, Object.assign({}, whole, columns));
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
  await whileWriting(pool, async (client) => {
    const { rows } = await client.query<{ name: string; version: string }>(
      "SELECT name, version FROM derivations",
    );
    const kept = new Map(rows.map(({ name, version }) => [name, version]));
    const stale = derivations.filter(({ name, version }) => kept.get(name) !== version);
    if (stale.some(({ hasQueryColumns }) => hasQueryColumns))
      await computeAgain(client, parts.computed, parts.writers);
    for (const { name, version, again } of stale) {
      await applyAll(client, await answerOn(client, again(stamp)), stamp, parts);
      await client.query(KEEP, [name, version]);
    }
  });
}
