import type { Database as Sqlite } from "better-sqlite3";
import { subjectOf } from "../changes.ts";
import { grouped, type Settled } from "../group.ts";
import type { Kind } from "../kind.ts";
import {
  type Change,
  type Commit,
  type CommitResult,
  ConflictError,
  type InTransactionRule,
  type Stamp,
  type WriteBatch,
} from "../port.ts";
import { RefusedError, requireExpected, requireVersion } from "../refusal.ts";
import type { Computed } from "../store.ts";
import { restingOn } from "../written-columns.ts";
import { answersFrom, piecesFrom } from "./answer.ts";
import { answerKeeper } from "./answers.ts";
import { eventAppender } from "./append-events.ts";
import { columnsFrom, computeAgain } from "./computed.ts";
import type { Pieces } from "./pieces.ts";
import { type Readers, transactionsOn } from "./transaction.ts";
import { applyChange, recordWriters } from "./writers.ts";

const COMMITTED: Settled<CommitResult> = { value: { kind: "committed" } };

type Parts = {
  readonly kinds: readonly Kind[];
  readonly rules: readonly InTransactionRule[];
  readonly computed: readonly Computed[];
  readonly readers: Readers;
};

/**
 * The one door for writes. Batches that wait together share a transaction (BEGIN IMMEDIATE) and are acknowledged after its
 * COMMIT has been flushed. Changes, events, hash chain and kept answer stand or fall together. When one of the batches is
 * refused, nothing of the transaction stays and all are applied again, now with a savepoint each: savepoints cost every batch the
 * copies of the pages it touches. What a batch streams can be taken once only, so it never goes without. A long transaction
 * takes turns with requests, and what is written meanwhile waits for its end.
 */
export function openCommit(sqlite: Sqlite, { kinds, rules, computed, readers }: Parts): Commit {
  const answerNow = answersFrom(sqlite);
  const answerInPieces = piecesFrom(sqlite);
  const { whole, part } = transactionsOn(sqlite, readers);
  const writers = recordWriters(sqlite, kinds);
  const appendEvents = eventAppender(sqlite, writers);
  const keepAnswer = answerKeeper(sqlite);
  const columnsOf = columnsFrom(computed, answerNow);

  function* applyAll(changes: readonly Change[], stamp: Stamp): Pieces {
    for (const change of changes) {
      if (change.action !== "create") {
        const id = subjectOf(change);
        requireVersion(change.kind, id, change.expectedVersion, writers(change.kind).currentVersion(id));
      }
      applyChange(writers, change, columnsOf);
      yield;
    }
    yield* appendEvents(changes, stamp);
  }

  function* applyWithRules(changes: readonly Change[], stamp: Stamp): Pieces {
    yield* applyAll(changes, stamp);
    yield* computeAgain(restingOn(changes, computed), { writers, answerNow });
    for (const rule of rules) yield* applyAll(yield* answerInPieces(rule(changes, stamp)), stamp);
  }

  function* apply({ stamp, changes, streamed = [], expects = [], answer }: WriteBatch): Pieces {
    if (answer !== undefined && !keepAnswer(answer, stamp.at)) throw new RefusedError({ kind: "answered" });
    for (const expected of expects)
      requireExpected(expected, writers(expected.kind).currentVersion(expected.id));
    yield* applyWithRules(changes, stamp);
    for (const change of streamed) yield* applyWithRules([change], stamp);
  }

  function* applyEach(batches: readonly WriteBatch[]): Pieces {
    for (const batch of batches) yield* apply(batch);
  }

  function* settleEach(batches: readonly WriteBatch[]): Pieces<Settled<CommitResult>[]> {
    const results: Settled<CommitResult>[] = [];
    for (const batch of batches) {
      try {
        yield* part(() => apply(batch));
        results.push(COMMITTED);
      } catch (error) {
        results.push(refusedBy(error, batch));
      }
    }
    return results;
  }

  /** How a batch was refused that threw this. Throws what ended the whole transaction. */
  function refusedBy(error: unknown, { changes: [first] }: WriteBatch): Settled<CommitResult> {
    if (error instanceof RefusedError) return { value: error.result };
    if (error instanceof ConflictError)
      return { value: { kind: "conflict", noun: error.noun, id: error.id } };
    // Of two that create at once what may be there once, the later one decides again.
    if (first !== undefined && isThereAlready(error)) {
      return { value: { kind: "conflict", noun: first.kind.noun, id: subjectOf(first) } };
    }
    // A full disk ends the whole transaction, not just this savepoint; a batch alone has no other.
    if (!sqlite.inTransaction) throw error;
    return { error };
  }

  return grouped(async (batches) => {
    const [alone] = batches;
    try {
      if (batches.length > 1 && batches.some(({ streamed }) => streamed !== undefined))
        return await whole(() => settleEach(batches));
      await whole(() => applyEach(batches));
      return batches.map(() => COMMITTED);
    } catch (error) {
      if (batches.length === 1 && alone !== undefined) return [refusedBy(error, alone)];
      if (isOfTheFile(error)) throw error;
      return whole(() => settleEach(batches));
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
