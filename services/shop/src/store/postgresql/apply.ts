import type { PoolClient } from "pg";
import { subjectOf } from "../changes.ts";
import type { ChainHead } from "../head.ts";
import type { Kept } from "../kind.ts";
import type { Change, InTransactionRule, Stamp, WriteBatch } from "../port.ts";
import type { RawRow } from "../readers.ts";
import { recordQueries } from "../record-queries.ts";
import { RefusedError, requireExpected, requireVersion } from "../refusal.ts";
import type { Computed } from "../store.ts";
import { queryColumnsOf, RECORDS_AT_ONCE, restingOn } from "../written-columns.ts";
import { answerOn } from "./answer.ts";
import { keepAnswer } from "./answers.ts";
import { appendEvents } from "./append-events.ts";
import { applyChange, type ColumnsOf, type Writers } from "./writers.ts";

export type Parts = {
  readonly writers: Writers;
  readonly rules: readonly InTransactionRule[];
  readonly computed: readonly Computed[];
  /** Is told the end of the chain whenever events were appended to it. */
  readonly noteHead?: (head: ChainHead) => void;
};

/** Applies a batch inside a transaction that nobody else writes beside. Throws a RefusedError when it must not be. */
export async function applyBatch(client: PoolClient, batch: WriteBatch, parts: Parts): Promise<void> {
  const { stamp, changes, streamed = [], expects = [], answer } = batch;
  if (answer !== undefined && !(await keepAnswer(client, answer, stamp.at)))
    throw new RefusedError({ kind: "answered" });
  for (const expected of expects)
    requireExpected(expected, await parts.writers(expected.kind).currentVersion(client, expected.id));
  await applyWithRules(client, changes, stamp, parts);
  for (const change of streamed) await applyWithRules(client, [change], stamp, parts);
}

/** Applies changes with their events, without what follows from them. */
export async function applyAll(
  client: PoolClient,
  changes: readonly Change[],
  stamp: Stamp,
  { writers, computed, noteHead }: Parts,
): Promise<void> {
  const columnsOf: ColumnsOf = (kind, record) => answerOn(client, queryColumnsOf(computed, kind, record));
  const kept = new Map<string, RawRow>();
  for (const change of changes) {
    if (change.action !== "create") {
      const id = subjectOf(change);
      const version = await writers(change.kind).currentVersion(client, id);
      requireVersion(change.kind, id, change.expectedVersion, version);
    }
    const row = await applyChange(client, writers, change, columnsOf);
    if (row !== undefined) kept.set(subjectOf(change), row);
  }
  const head = await appendEvents(client, changes, stamp, kept);
  if (head !== undefined) noteHead?.(head);
}

/** Computes the query columns of every record again. No event says so, for no record changed. */
export async function computeAgain(client: PoolClient, computed: readonly Computed[], writers: Writers) {
  for (const { kind, of } of computed) {
    const writer = writers(kind);
    const { page } = recordQueries(kind);
    for (let afterId: string | undefined = ""; afterId !== undefined; ) {
      const records: readonly Kept[] = await answerOn(client, page(afterId, RECORDS_AT_ONCE));
      for (const record of records) {
        await writer.update(client, record.id, await answerOn(client, of(record)), writer.queryColumns);
      }
      afterId = records.at(-1)?.id;
    }
  }
}

async function applyWithRules(
  client: PoolClient,
  changes: readonly Change[],
  stamp: Stamp,
  parts: Parts,
): Promise<void> {
  await applyAll(client, changes, stamp, parts);
  await computeAgain(client, restingOn(changes, parts.computed), parts.writers);
  for (const rule of parts.rules) {
    await applyAll(client, await answerOn(client, rule(changes, stamp)), stamp, parts);
  }
}
