import type { Database as Sqlite } from "better-sqlite3";
import { all } from "../query.ts";
import type { Completion } from "../store.ts";
import type { AnswerNow } from "./answer.ts";
import { type ColumnsOf, recordWriters } from "./writers.ts";

/** Computes for older records what a migration cannot, because SQL does not know how. No event says so: nothing happened. */
export function completeRecords(
  sqlite: Sqlite,
  completions: readonly Completion[],
  answerNow: AnswerNow,
  columnsOf: ColumnsOf,
): void {
  for (const completion of completions) {
    const { kind, incomplete } = completion;
    const records = answerNow(all(incomplete));
    if (records.length === 0) continue;
    const writer = recordWriters(sqlite, [kind])(kind);
    const write = sqlite.transaction(() => {
      for (const record of records) {
        const whole = Object.assign({}, record, answerNow(completion.complete(record)));
        writer.update(record.id, Object.assign({}, whole, columnsOf(kind, whole)));
      }
    });
    write.immediate();
  }
}
