import { setImmediate as nextTurn } from "node:timers/promises";
import { bits } from "../bits/reads.ts";
import { places } from "../places/reads.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import type { Answer } from "../store/store.ts";
import { csvRows } from "./csv-rows.ts";
import { decideRow, type ReadBit, type RowDecision } from "./decide.ts";
import { ndjsonRows } from "./ndjson-rows.ts";
import type { Reading, ReadRows, Row, RowFault } from "./rows.ts";
import { type Format, MOST_ROWS, type Mode } from "./schema.ts";
import type { RowOutcome } from "./tally.ts";
import type { Upload } from "./upload.ts";

/** A row and what came of it. `decide` decides it again, by how things are then. */
export type DecidedRow = {
  readonly line: number;
  readonly outcome: RowOutcome;
  readonly readings: readonly Reading[];
  readonly decide: () => Promise<RowOutcome>;
};

/** What rows are decided by. */
export type Grounds = {
  readonly answer: Answer;
  readonly readBit: ReadBit;
  readonly at: string;
};

type ReadableRow = Extract<Row, { kind: "row" }>;

const READERS: Readonly<Record<Format, ReadRows>> = { csv: csvRows, ndjson: ndjsonRows };

/** Rows after which others get their turn: some ten milliseconds of work. */
const ROWS_IN_A_TURN = 20;

/** Reads a file and decides its rows, one at a time. Nothing is changed by it. */
export async function* decidedRows(
  upload: Upload,
  { format, mode }: { readonly format: Format; readonly mode: Mode },
  grounds: Grounds,
): AsyncGenerator<DecidedRow> {
  const firstLines = new Map<string, number>();
  let rows = 0;
  for await (const row of READERS[format](upload.read())) {
    rows += 1;
    if (rows % ROWS_IN_A_TURN === 0) await nextTurn();
    const decide = decision(row, firstLines, grounds, rows > MOST_ROWS[mode] ? mode : undefined);
    const outcome = await decide();
    yield { line: row.line, outcome, readings: row.kind === "row" ? row.readings : [], decide };
    if (outcome.kind === "broken") return;
  }
}

/** How a row is decided. Its id is looked for among the rows before it once only. */
function decision(
  row: Row,
  firstLines: Map<string, number>,
  grounds: Grounds,
  full: Mode | undefined,
): () => Promise<RowOutcome> {
  if (full !== undefined) return async () => ({ kind: "broken", faults: [tooMany(full)] });
  if (row.kind !== "row") {
    return async () => ({ kind: row.kind === "broken" ? "broken" : "refused", faults: row.faults });
  }
  const { id, line } = row;
  const firstLine = id === undefined ? undefined : firstLines.get(id);
  if (firstLine !== undefined) return async () => ({ kind: "refused", faults: [twice(firstLine)] });
  if (id !== undefined) firstLines.set(id, line);
  return () => grounds.answer(decidedRow(row, grounds));
}

function* decidedRow(row: ReadableRow, { readBit, at }: Grounds): Question<RowDecision> {
  const current = row.id === undefined ? undefined : yield* bits.find(row.id);
  const decided = decideRow(row, current, {
    readBit,
    newId: () => newId(bits.kind.idPrefix),
    at,
    policy: yield* shopPolicy(),
  });
  if (decided.kind !== "created" && decided.kind !== "changed") return decided;
  const { homePlaceId } = decided.record;
  const isKnown =
    homePlaceId === undefined ||
    homePlaceId === current?.homePlaceId ||
    (yield* places.find(homePlaceId)) !== undefined;
  return isKnown ? decided : { kind: "refused", faults: [unknownPlace(row, homePlaceId)] };
}

function unknownPlace({ content }: ReadableRow, given: string): RowFault {
  const column = content.kind === "whole" ? "/homePlaceId" : "homePlaceId";
  return { column, given, message: "There is no such place.", accepted: "the id of a place of the shop" };
}

function twice(firstLine: number): RowFault {
  return {
    column: "id",
    message: `This id stands on line ${firstLine} already.`,
    accepted: "each id once in a file",
  };
}

function tooMany(mode: Mode): RowFault {
  const more = mode === "all-or-nothing" ? ` (mode=row-by-row: ${MOST_ROWS["row-by-row"]})` : "";
  return {
    message: "The file has too many rows.",
    accepted: `at most ${MOST_ROWS[mode]} rows${more}; send it in parts`,
  };
}
