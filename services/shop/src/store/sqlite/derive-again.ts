import type { Database as Sqlite } from "better-sqlite3";
import type { Stamp } from "../port.ts";
import type { Shape } from "../store.ts";
import type { AnswerNow } from "./answer.ts";
import { eventAppender } from "./append-events.ts";
import { columnsFrom, computeAgain } from "./computed.ts";
import { atOnce } from "./pieces.ts";
import { applyChange, recordWriters } from "./writers.ts";

/**
 * Derives again what another version of the program derived: query columns, and the changes that follow. In one transaction with
 * the versions, so that a start that is cut off begins again.
 */
export function deriveAgain(
  sqlite: Sqlite,
  { kinds, computed, derivations }: Shape,
  answerNow: AnswerNow,
  at: string,
): void {
  const kept = sqlite.prepare<[string], string>("SELECT version FROM derivations WHERE name = ?").pluck();
  const stale = derivations.filter(({ name, version }) => kept.get(name) !== version);
  if (stale.length === 0) return;
  const keep = sqlite.prepare(
    "INSERT INTO derivations VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET version = excluded.version",
  );
  const writers = recordWriters(sqlite, kinds);
  const columnsOf = columnsFrom(computed, answerNow);
  const appendEvents = eventAppender(sqlite, writers);
  const stamp: Stamp = { by: "system", at, requestId: "start" };
  sqlite
    .transaction(() => {
      if (stale.some(({ hasQueryColumns }) => hasQueryColumns))
        atOnce(computeAgain(computed, { writers, answerNow }));
      for (const { name, version, again } of stale) {
        const changes = answerNow(again(stamp));
        for (const change of changes) applyChange(writers, change, columnsOf);
        atOnce(appendEvents(changes, stamp));
        keep.run(name, version);
      }
    })
    .immediate();
}
