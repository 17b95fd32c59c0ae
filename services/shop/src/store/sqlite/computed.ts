import type { Kept } from "../kind.ts";
import { recordQueries } from "../record-queries.ts";
import type { Computed } from "../store.ts";
import { queryColumnsOf, RECORDS_AT_ONCE } from "../written-columns.ts";
import type { AnswerNow } from "./answer.ts";
import type { Pieces } from "./pieces.ts";
import type { ColumnsOf, Writers } from "./writers.ts";

/** Computes query columns as they are now: also inside a transaction. */
export function columnsFrom(computed: readonly Computed[], answerNow: AnswerNow): ColumnsOf {
  return (kind, record) => answerNow(queryColumnsOf(computed, kind, record));
}

/** Computes the query columns of every record again. Inside a transaction; no event says so, for no record changed. */
export function* computeAgain(
  computed: readonly Computed[],
  { writers, answerNow }: { readonly writers: Writers; readonly answerNow: AnswerNow },
): Pieces {
  for (const { kind, of } of computed) {
    const writer = writers(kind);
    const { page } = recordQueries(kind);
    for (let afterId: string | undefined = ""; afterId !== undefined; ) {
      const records: readonly Kept[] = answerNow(page(afterId, RECORDS_AT_ONCE));
      for (const record of records) {
        writer.update(record.id, answerNow(of(record)), writer.queryColumns);
        yield;
      }
      afterId = records.at(-1)?.id;
    }
  }
}
