import type { Outcome } from "../http/answer-once.ts";
import { changedMeanwhile, retryOnConflict, type Write } from "../http/write.ts";
import { Problem } from "../problems/problem.ts";
import { shopPolicyAsItIs } from "../shop-policy/reads.ts";
import { creation, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Stamp } from "../store/port.ts";
import { rowChange, type Written } from "./decide.ts";
import { type DecidedRow, decidedRows, type Grounds } from "./decided-rows.ts";
import { importKind } from "./kind.ts";
import type { Format, ImportRecord, ImportReport, Mode } from "./schema.ts";
import { openStaged, type Staged } from "./staged.ts";
import { counted, EMPTY_TALLY, type RowOutcome, type Tally, withReadings } from "./tally.ts";
import type { Upload } from "./upload.ts";

export type ImportAsk = { readonly format: Format; readonly mode: Mode; readonly isDryRun: boolean };

type Parts = Omit<Grounds, "at"> & {
  readonly write: Write;
  readonly stamp: Stamp;
  readonly now: () => Date;
  /** Called once the import is entered in the history: from then on rows of it may be kept, whatever comes of it. */
  readonly onEntered: (importId: string) => void;
};
type Job = { readonly upload: Upload; readonly ask: ImportAsk; readonly parts: Parts };

/** Rows that are written together: a transaction holds no more write batches. */
const ROWS_IN_A_BATCH = 100;

/**
 * Takes in a file of bits and reports what came of it. All or nothing: throws `import-not-valid`, with the report, when
 * one row cannot be taken. Row by row: every row is a change of its own, on the disk before the next hundred are looked at.
 * What is left to write is the outcome's, with the report that answers.
 */
export function importBits(upload: Upload, ask: ImportAsk, parts: Parts): Promise<Outcome> {
  const job = { upload, ask, parts };
  if (ask.isDryRun) return reportOnly(job);
  return ask.mode === "all-or-nothing" ? allOrNothing(job) : rowByRow(job);
}

async function reportOnly({ upload, ask, parts }: Job): Promise<Outcome> {
  let tally = EMPTY_TALLY;
  for await (const { line, outcome, readings } of rowsOf({ upload, ask, parts })) {
    tally = withReadings(counted(tally, line, outcome), line, readings);
  }
  requireTaken(tally, ask);
  return { stamp: parts.stamp, changes: [], status: 200, body: reportOf(tally, ask) };
}

async function allOrNothing(job: Job): Promise<Outcome> {
  const staged = await openStaged();
  // The columns that bits are looked up by are made beforehand, under the policy as it is now.
  const expects = [await job.parts.answer(shopPolicyAsItIs())];
  try {
    const tally = await stage(job, staged);
    const { ask, parts } = job;
    requireTaken(tally, ask);
    const { stamp } = parts;
    const release = () => staged.close();
    if (tally.created + tally.changed === 0) {
      return { stamp, changes: [], status: 200, body: reportOf(tally, ask), release };
    }
    const record = importRecord(job, tally, "done");
    const batch = {
      stamp,
      changes: [creation(importKind, record)],
      expects,
      streamed: await staged.changes(),
    };
    return { ...batch, status: 200, body: reportOf(tally, ask, record.id), release };
  } catch (error) {
    await staged.close();
    throw error;
  }
}

/** Decides every row. As soon as one cannot be taken, the others are only looked at. */
async function stage(job: Job, staged: Staged): Promise<Tally> {
  let tally = EMPTY_TALLY;
  for await (const { line, outcome } of rowsOf(job)) {
    tally = counted(tally, line, outcome);
    if (tally.refused === 0 && isWritten(outcome)) await staged.add(outcome);
  }
  return tally;
}

async function rowByRow(job: Job): Promise<Outcome> {
  const { ask, parts } = job;
  let record: ImportRecord | undefined;
  let tally = EMPTY_TALLY;
  let batch: DecidedRow[] = [];

  async function writeBatch(): Promise<void> {
    if (record === undefined && batch.some(({ outcome }) => isWritten(outcome))) {
      // Entered beforehand, so that a file whose import was cut off is known as well.
      record = importRecord(job, EMPTY_TALLY, "running");
      await parts.write({ stamp: parts.stamp, changes: [creation(importKind, record)] });
      parts.onEntered(record.id);
    }
    const outcomes = await Promise.all(batch.map((row) => writeRow(row, parts)));
    for (const [index, { line, outcome }] of batch.entries()) {
      tally = counted(tally, line, outcomes[index] ?? outcome);
    }
    batch = [];
  }

  for await (const row of rowsOf(job)) {
    batch.push(row);
    if (batch.length === ROWS_IN_A_BATCH) await writeBatch();
  }
  await writeBatch();
  if (record === undefined) {
    requireTaken(tally, ask);
    return { stamp: parts.stamp, changes: [], status: 200, body: reportOf(tally, ask) };
  }
  const stamp = { ...parts.stamp, at: parts.now().toISOString() };
  const done = nextVersion<ImportRecord>({ ...record, ...countsOf(tally), state: "done" }, stamp.at);
  const changes = [replacement(importKind, record, done, "finished")];
  return { stamp, changes, status: 200, body: reportOf(tally, ask, record.id) };
}

/** Writes one row, decided again if its bit has changed meanwhile. What cannot be done is the row's own fault. */
async function writeRow(row: DecidedRow, { write, stamp }: Parts): Promise<RowOutcome> {
  let first: RowOutcome | undefined = row.outcome;
  try {
    return await retryOnConflict(async () => {
      const outcome = first ?? (await row.decide());
      first = undefined;
      if (isWritten(outcome)) await write({ stamp, changes: [rowChange(outcome)] }, changedMeanwhile);
      return outcome;
    });
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { kind: "refused", faults: [{ message: error.message, accepted: "the same row again" }] };
  }
}

function rowsOf({ upload, ask, parts }: Job): AsyncIterable<DecidedRow> {
  return decidedRows(upload, ask, { ...parts, at: parts.stamp.at });
}

function isWritten(outcome: RowOutcome): outcome is Written {
  return outcome.kind === "created" || outcome.kind === "changed";
}

function importRecord({ upload, ask, parts }: Job, tally: Tally, state: ImportRecord["state"]): ImportRecord {
  const { at } = parts.stamp;
  const { format, mode } = ask;
  const { sha256 } = upload;
  return newRecord(newId(importKind.idPrefix), { sha256, format, mode, state, ...countsOf(tally) }, at);
}

function countsOf({ rows, created, changed, unchanged, refused, newIds }: Tally) {
  return { rows, created, changed, unchanged, refused, newIds };
}

function reportOf(tally: Tally, { mode, isDryRun }: ImportAsk, importId?: string): ImportReport {
  const { newIds: _, ...counts } = tally;
  return { ...(importId !== undefined && { importId }), mode, isDryRun, ...counts };
}

/** Throws when the file is refused: one of all its rows cannot be taken, or none of them, row by row, can. */
function requireTaken(tally: Tally, ask: ImportAsk): void {
  const { refused, isComplete, created, changed, unchanged } = tally;
  if (refused === 0 && isComplete) return;
  if (ask.mode === "row-by-row" && created + changed + unchanged > 0) return;
  throw refusal(tally, ask);
}

function refusal(tally: Tally, ask: ImportAsk): Problem {
  const report = reportOf(ask.isDryRun ? tally : { ...tally, created: 0, changed: 0 }, ask);
  return new Problem("import-not-valid", "Nothing was changed. The report says what each row accepts.", {
    report,
  });
}
