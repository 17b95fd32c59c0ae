import type { Database as Sqlite } from "better-sqlite3";
import type { Answers } from "./answers.ts";
import { subjectOf } from "./changes.ts";
import { eventAppender } from "./events.ts";
import { grouped, type Settled } from "./group.ts";
import type { Change, Commit, Order, Outcome, Stamp } from "./port.ts";
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
 * What follows from changes that have just been applied, in the same transaction: changes that belong to them. Throws
 * GroundMoved where an order rests on something that is not so any more.
 */
export type Follow = (changes: readonly Change[], stamp: Stamp) => readonly Change[];

/** Leaves an order whose decision no longer fits what is kept: it is to be decided again. */
export class GroundMoved extends Error {
  readonly type: RecordType;
  readonly id: string;

  constructor(type: RecordType, id: string) {
    super(`${id} was decided on other grounds`);
    this.type = type;
    this.id = id;
  }
}

/**
 * The one door for writes. Orders that wait together share a transaction (BEGIN IMMEDIATE) and are acknowledged after its
 * COMMIT has been flushed. Changes, events, hash chain and kept answer stand or fall together. Where one of the orders is
 * refused, nothing of the transaction stays and all are applied anew, now with a savepoint each: savepoints cost every order the
 * copies of the pages it touches. What an order streams can be taken once only, so it never goes without.
 */
export function openCommit(sqlite: Sqlite, answers: Answers, follow: Follow): Commit {
  const writers = recordWriters(sqlite);
  const appendEvents = eventAppender(sqlite);

  function checkVersion(type: RecordType, id: string, expected: number): void {
    const version = writers[type].currentVersion(id);
    if (version === undefined) throw new Refused({ kind: "gone", type, id });
    if (version !== expected) throw new Refused({ kind: "stale", type, id, version });
  }

  function applyAll(changes: readonly Change[], stamp: Stamp): void {
    for (const change of changes) {
      if (change.action !== "create") checkVersion(change.type, subjectOf(change), change.expectedVersion);
      applyChange(writers, change);
    }
    appendEvents(changes, stamp);
  }

  function apply({ stamp, changes, streamed = [], expects = [], answer }: Order): void {
    if (answer !== undefined && !answers.keep(answer, stamp.at)) throw new Refused({ kind: "answered" });
    for (const { type, id, version } of expects) checkVersion(type, id, version);
    applyAll(changes, stamp);
    applyAll(follow(changes, stamp), stamp);
    for (const change of streamed) {
      applyAll([change], stamp);
      applyAll(follow([change], stamp), stamp);
    }
  }

  /** In a savepoint where a transaction is open, in a transaction of its own where not. */
  const applyWhole = sqlite.transaction(apply).immediate;
  const applyTogether = sqlite.transaction((orders: readonly Order[]) => orders.forEach(apply)).immediate;

  function settle(order: Order): Settled<Outcome> {
    try {
      applyWhole(order);
      return { value: { kind: "committed" } };
    } catch (error) {
      if (error instanceof Refused) return { value: error.outcome };
      if (error instanceof GroundMoved) return { value: { kind: "moved", type: error.type, id: error.id } };
      // Of two that create at once what may be there once, the later one decides again.
      const [first] = order.changes;
      if (first !== undefined && isThereAlready(error)) {
        return { value: { kind: "moved", type: first.type, id: subjectOf(first) } };
      }
      // A full disk ends the whole transaction, not just this savepoint; an order alone has no other.
      if (!sqlite.inTransaction) throw error;
      return { error };
    }
  }

  const settleEach = sqlite.transaction((orders: readonly Order[]) => orders.map(settle)).immediate;

  return grouped((orders) => {
    if (orders.length === 1) return orders.map(settle);
    if (orders.some(({ streamed }) => streamed !== undefined)) return settleEach(orders);
    try {
      applyTogether(orders);
      return orders.map(() => ({ value: { kind: "committed" } }));
    } catch (error) {
      if (isOfTheFile(error)) throw error;
      return settleEach(orders);
    }
  });
}

function isThereAlready(error: unknown): boolean {
  return codeOf(error) === "SQLITE_CONSTRAINT_UNIQUE";
}

/** A locked file or a full disk fails every order: trying each would only take as long again. */
function isOfTheFile(error: unknown): boolean {
  const code = codeOf(error);
  return code.startsWith("SQLITE_") && !code.startsWith("SQLITE_CONSTRAINT");
}

function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}
