import { subjectOf } from "../changes.ts";
import type { Kept } from "../kind.ts";
import type { Change, InTransactionRule, Stamp, WriteBatch } from "../port.ts";
import { recordQueries } from "../record-queries.ts";
import { requireExpected, requireVersion } from "../refusal.ts";
import type { Computed } from "../store.ts";
import { queryColumnsOf, RECORDS_AT_ONCE, restingOn } from "../written-columns.ts";
import type { AnswerAt } from "./answers.ts";
import type { TableWriters, Write } from "./table-writer.ts";
import type { Named, Writing } from "./writing.ts";

export type Parts = {
  readonly writers: TableWriters;
  readonly rules: readonly InTransactionRule[];
  readonly computed: readonly Computed[];
};

/** Looks up in one turn what these batches rest on and change. */
export function lookUpAll(writing: Writing, batches: readonly WriteBatch[]): Promise<void> {
  const records = batches.flatMap(({ expects = [], changes }) => [...expects, ...changedBy(changes)]);
  return writing.lookUp(records, batches.flatMap(answerOf));
}

/** Applies a batch inside a transaction that nobody else writes beside. Throws a RefusedError when it must not be. */
export async function applyBatch(writing: Writing, batch: WriteBatch, parts: Parts): Promise<void> {
  const { stamp, changes, streamed = [], expects = [] } = batch;
  for (const answer of answerOf(batch)) await writing.keepAnswer(answer);
  for (const expected of expects) requireExpected(expected, await writing.version(expected));
  await applyWithRules(writing, changes, stamp, parts);
  for (const some of chunksOf(streamed)) {
    await writing.lookUp(changedBy(some));
    for (const change of some) await applyWithRules(writing, [change], stamp, parts);
  }
}

/** Applies changes with their events, without what follows from them. */
export async function applyAll(
  writing: Writing,
  changes: readonly Change[],
  stamp: Stamp,
  { writers, computed }: Parts,
): Promise<void> {
  await writing.lookUp(changedBy(changes));
  const written = new Map<string, Write | undefined>();
  for (const change of changes) {
    const { kind } = change;
    const id = subjectOf(change);
    if (change.action !== "create")
      requireVersion(kind, id, change.expectedVersion, await writing.version({ kind, id }));
    written.set(id, await applyChange(writing, change, { writers, computed }));
    await writing.relieve();
  }
  for (const change of changes) writing.append(change, stamp, written.get(subjectOf(change)));
}

/** Computes the query columns of every record again. No event says so, for no record changed. */
export async function computeAgain(
  writing: Writing,
  computed: readonly Computed[],
  writers: TableWriters,
): Promise<void> {
  for (const { kind, of } of computed) {
    const { queryColumns } = writers(kind);
    const { page } = recordQueries(kind);
    for (let afterId: string | undefined = ""; afterId !== undefined; ) {
      const records: readonly Kept[] = await writing.ask(page(afterId, RECORDS_AT_ONCE));
      for (const record of records)
        writing.update(kind, record.id, await writing.ask(of(record)), { changed: queryColumns });
      await writing.relieve();
      afterId = records.at(-1)?.id;
    }
  }
}

async function applyWithRules(
  writing: Writing,
  changes: readonly Change[],
  stamp: Stamp,
  parts: Parts,
): Promise<void> {
  await applyAll(writing, changes, stamp, parts);
  await computeAgain(writing, restingOn(changes, parts.computed), parts.writers);
  for (const rule of parts.rules)
    await applyAll(writing, await writing.ask(rule(changes, stamp)), stamp, parts);
}

/** Applies one change, whose expected version has been checked. */
async function applyChange(
  writing: Writing,
  change: Change,
  { writers, computed }: Pick<Parts, "writers" | "computed">,
): Promise<Write | undefined> {
  const { kind } = change;
  switch (change.action) {
    case "create":
      return writing.insert(
        kind,
        change.record.id,
        await rowOf(writing, change, computed),
        change.record.version,
      );
    case "replace": {
      const changed = change.changed && [...change.changed, ...writers(kind).queryColumns];
      const row = await rowOf(writing, change, computed);
      return writing.update(kind, change.record.id, row, { changed, version: change.record.version });
    }
    case "amend":
      return writing.update(kind, change.id, change.fields, {
        changed: Object.keys(change.fields),
        version: change.fields.version,
      });
    case "remove":
      writing.remove(kind, change.id);
      return undefined;
  }
}

/** A record with the columns that only its queries need. */
async function rowOf(
  writing: Writing,
  { kind, record, queryColumns }: Extract<Change, { readonly record: object }>,
  computed: readonly Computed[],
): Promise<object> {
  const columns = queryColumns ?? (await writing.ask(queryColumnsOf(computed, kind, record)));
  return columns === undefined ? record : Object.assign({}, record, columns);
}

function answerOf({ answer, stamp }: WriteBatch): readonly AnswerAt[] {
  return answer === undefined ? [] : [[answer, stamp.at]];
}

function changedBy(changes: readonly Change[]): Named[] {
  return changes.flatMap((change) =>
    change.action === "create" ? [] : [{ kind: change.kind, id: subjectOf(change) }],
  );
}

function* chunksOf(changes: Iterable<Change>): Iterable<readonly Change[]> {
  let some: Change[] = [];
  for (const change of changes) {
    some.push(change);
    if (some.length < RECORDS_AT_ONCE) continue;
    yield some;
    some = [];
  }
  yield some;
}
