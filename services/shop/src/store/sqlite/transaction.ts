import { setImmediate as nextTurn, setTimeout as wait } from "node:timers/promises";
import type { Database as Sqlite } from "better-sqlite3";
import { TURN_MS } from "../turn.ts";
import { BUSY_TIMEOUT_MS, isBusy } from "./connection.ts";
import type { Pieces } from "./pieces.ts";

/** What is done about the readers of a connection whose transaction is half done while they have their turn. */
export type Readers = { readonly moveBeside: () => void; readonly moveBack: () => void };

/** How soon it is asked again whether another process has done writing. */
const ASK_AGAIN_MS = 2;

export type Transactions = {
  /** Does work in a transaction (BEGIN IMMEDIATE): all of it or, when it throws, nothing. One at a time. */
  readonly whole: <Result>(work: () => Pieces<Result>) => Promise<Result>;
  /** The same inside such a transaction. */
  readonly part: <Result>(work: () => Pieces<Result>) => Pieces<Result>;
};

/**
 * Transactions that take turns with requests when they are long. Readers move to a connection beside for as long, so that
 * they see nothing half done. A database in memory has no other connection: there a transaction goes on to its end.
 */
export function transactionsOn(sqlite: Sqlite, { moveBeside, moveBack }: Readers): Transactions {
  const [begin, commit, rollback, save, release, undo] = [
    "BEGIN IMMEDIATE",
    "COMMIT",
    "ROLLBACK",
    "SAVEPOINT part",
    "RELEASE part",
    "ROLLBACK TO part",
  ].map((sql) => sqlite.prepare(sql));
  const impatient = sqlite.prepare("PRAGMA busy_timeout = 0");
  const patient = sqlite.prepare(`PRAGMA busy_timeout = ${BUSY_TIMEOUT_MS}`);

  let waitingSince: number | undefined;

  /** Whether nobody else writes. Waiting for another process inside SQLite would hold up everybody here. */
  function isBegun(): boolean {
    impatient.get();
    try {
      begin?.run();
      waitingSince = undefined;
      return true;
    } catch (error) {
      waitingSince ??= performance.now();
      if (isBusy(error) && performance.now() - waitingSince < BUSY_TIMEOUT_MS) return false;
      waitingSince = undefined;
      throw error;
    } finally {
      patient.get();
    }
  }

  async function takingTurns<Result>(pieces: Pieces<Result>): Promise<Result> {
    let since = performance.now();
    let isBeside = false;
    try {
      for (;;) {
        const next = pieces.next();
        if (next.done === true) {
          commit?.run();
          return next.value;
        }
        if (sqlite.memory || performance.now() - since < TURN_MS) continue;
        if (!isBeside) moveBeside();
        isBeside = true;
        await nextTurn();
        since = performance.now();
      }
    } catch (error) {
      // A full disk has ended it already.
      if (sqlite.inTransaction) rollback?.run();
      throw error;
    } finally {
      if (isBeside) moveBack();
    }
  }

  return {
    whole: async (work) => {
      while (!isBegun()) await wait(ASK_AGAIN_MS);
      return takingTurns(work());
    },
    part: function* (work) {
      save?.run();
      try {
        const result = yield* work();
        release?.run();
        return result;
      } catch (error) {
        if (sqlite.inTransaction) {
          undo?.run();
          release?.run();
        }
        throw error;
      }
    },
  };
}
