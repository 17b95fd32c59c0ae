import type { Database as Sqlite } from "better-sqlite3";
import { subjectOf } from "../changes.ts";
import { grouped, type Settled } from "../group.ts";
import type { Kind } from "../kind.ts";
import {
  type Change,
  type Commit,
  type CommitResult,
  ConflictError,
  type Expectation,
  type InTransactionRule,
  type Stamp,
  type WriteBatch,
} from "../port.ts";
import type { Computed } from "../store.ts";
import type { AnswerNow } from "./answer.ts";
import { answerKeeper } from "./answers.ts";
import { eventAppender } from "./append-events.ts";
import { columnsFrom, computeAgain, restingOn } from "./computed.ts";
import { applyChange, recordWriters } from "./writers.ts";

/** Leaves a batch's savepoint, so that nothing of the batch stays. */
class RefusedError extends Error {
  readonly result: CommitResult;

  constructor(result: CommitResult) {
    super(result.kind);
    this.result = result;
  }
}

type Parts = {
  readonly kinds: readonly Kind[];
  readonly rules: readonly InTransactionRule[];
  readonly computed: readonly Computed[];
  readonly answerNow: AnswerNow;
};

/**
 * The one door for writes. Batches that wait together share a transaction (BEGIN IMMEDIATE) and are acknowledged after its
 * COMMIT has been flushed. Changes, events, hash chain and kept answer stand or fall together. When one of the batches is
 * refused, nothing of the transaction stays and all are applied again, now with a savepoint each: savepoints cost every batch the
 * copies of the pages it touches. What a batch streams can be taken once only, so it never goes without.
 */
export function openCommit(sqlite: Sqlite, { kinds, rules, computed, answerNow }: Parts): Commit {
  const writers = recordWriters(sqlite, kinds);
  const appendEvents = eventAppender(sqlite, writers);
  const keepAnswer = answerKeeper(sqlite);
  const columnsOf = columnsFrom(computed, answerNow);

  function checkVersion(kind: Kind, id: string, expected: number): void {
    const { noun } = kind;
    const version = writers(kind).currentVersion(id);
    if (version === undefined) throw new RefusedError({ kind: "gone", noun, id });
    if (version !== expected) throw new RefusedError({ kind: "stale", noun, id, version });
  }

  function checkExpected({ kind, id, version }: Expectation): void {
    if (version !== undefined) {
      checkVersion(kind, id, version);
      return;
    }
    const current = writers(kind).currentVersion(id);
    if (current !== undefined)
      throw new RefusedError({ kind: "stale", noun: kind.noun, id, version: current });
  }

  function applyAll(changes: readonly Change[], stamp: Stamp): void {
    for (const change of changes) {
      if (change.action !== "create") checkVersion(change.kind, subjectOf(change), change.expectedVersion);
      applyChange(writers, change, columnsOf);
    }
    appendEvents(changes, stamp);
  }

  function applyWithRules(changes: readonly Change[], stamp: Stamp): void {
    applyAll(changes, stamp);
    computeAgain(restingOn(changes, computed), { writers, answerNow });
    for (const rule of rules) applyAll(answerNow(rule(changes, stamp)), stamp);
  }

  function apply({ stamp, changes, streamed = [], expects = [], answer }: WriteBatch): void {
    if (answer !== undefined && !keepAnswer(answer, stamp.at)) throw new RefusedError({ kind: "answered" });
    for (const expected of expects) checkExpected(expected);
    applyWithRules(changes, stamp);
    for (const change of streamed) applyWithRules([change], stamp);
  }

  /** In a savepoint inside a transaction, else in a transaction of its own. */
  const applyWhole = sqlite.transaction(apply).immediate;
  const applyTogether = sqlite.transaction((batches: readonly WriteBatch[]) =>
    batches.forEach(apply),
  ).immediate;

  function settle(batch: WriteBatch): Settled<CommitResult> {
    try {
      applyWhole(batch);
      return { value: { kind: "committed" } };
    } catch (error) {
      if (error instanceof RefusedError) return { value: error.result };
      if (error instanceof ConflictError) {
        return { value: { kind: "conflict", noun: error.noun, id: error.id } };
      }
      // Of two that create at once what may be there once, the later one decides again.
      const [first] = batch.changes;
      if (first !== undefined && isThereAlready(error)) {
        return { value: { kind: "conflict", noun: first.kind.noun, id: subjectOf(first) } };
      }
      // A full disk ends the whole transaction, not just this savepoint; a batch alone has no other.
      if (!sqlite.inTransaction) throw error;
      return { error };
    }
  }

  const settleEach = sqlite.transaction((batches: readonly WriteBatch[]) => batches.map(settle)).immediate;

  return grouped((batches) => {
    if (batches.length === 1) return batches.map(settle);
    if (batches.some(({ streamed }) => streamed !== undefined)) return settleEach(batches);
    try {
      applyTogether(batches);
      return batches.map(() => ({ value: { kind: "committed" } }));
    } catch (error) {
      if (isOfTheFile(error)) throw error;
      return settleEach(batches);
    }
  });
}

function isThereAlready(error: unknown): boolean {
  return codeOf(error) === "SQLITE_CONSTRAINT_UNIQUE";
}

/** A locked file or a full disk fails every batch: trying each would only take as long again. */
function isOfTheFile(error: unknown): boolean {
  const code = codeOf(error);
  return code.startsWith("SQLITE_") && !code.startsWith("SQLITE_CONSTRAINT");
}

function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}
