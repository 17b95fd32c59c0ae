import type { Database as Sqlite } from "better-sqlite3";
import type { Answers } from "./answers.ts";
import type { Database } from "./database.ts";
import { eventAppender } from "./events.ts";
import { grouped, type Settled } from "./group.ts";
import type { Commit, Order, Outcome } from "./port.ts";
import type { RecordType } from "./records.ts";
import { applyChange, recordWriters } from "./writers.ts";

/** Leaves an order's savepoint, so that nothing of the order stays. */
class Refused extends Error {
  readonly outcome: Outcome;

  constructor(outcome: Outcome) {
    super(outcome.kind);
    this.outcome = outcome;
  }
}

/**
 * The one door for writes. Orders that wait together share a transaction (BEGIN IMMEDIATE), a savepoint each, and are
 * acknowledged after its COMMIT has been flushed. Changes, events, hash chain and kept answer stand or fall together.
 */
export function openCommit(sqlite: Sqlite, database: Database, answers: Answers): Commit {
  const writers = recordWriters(database);
  const appendEvent = eventAppender(database);

  function checkVersion(type: RecordType, id: string, expected: number): void {
    const version = writers[type].currentVersion(id);
    if (version === undefined) throw new Refused({ kind: "gone", type, id });
    if (version !== expected) throw new Refused({ kind: "stale", type, id, version });
  }

  function apply({ stamp, changes, expects = [], answer }: Order): void {
    if (answer !== undefined && !answers.keep(answer, stamp.at)) throw new Refused({ kind: "answered" });
    for (const { type, id, version } of expects) checkVersion(type, id, version);
    for (const change of changes) {
      if (change.action !== "create") {
        const id = change.action === "remove" ? change.id : change.record.id;
        checkVersion(change.type, id, change.expectedVersion);
      }
      applyChange(writers, change);
      appendEvent(change, stamp);
    }
  }

  const applyInSavepoint = sqlite.transaction(apply);

  function settle(order: Order): Settled<Outcome> {
    try {
      applyInSavepoint(order);
      return { value: { kind: "committed" } };
    } catch (error) {
      if (error instanceof Refused) return { value: error.outcome };
      // A full disk ends the whole transaction, not just this savepoint.
      if (!sqlite.inTransaction) throw error;
      return { error };
    }
  }

  const settleInTransaction = sqlite.transaction((orders: readonly Order[]) => orders.map(settle));
  return grouped((orders) => settleInTransaction.immediate(orders));
}
