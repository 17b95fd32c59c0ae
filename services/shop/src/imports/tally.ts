import type { RowDecision } from "./decide.ts";
import type { Reading, RowFault } from "./rows.ts";
import { type ImportReport, MOST_FAULTS_LISTED, MOST_READINGS_LISTED } from "./schema.ts";

/** What came of one row, or of the end of what can be read. */
export type RowOutcome = RowDecision | { readonly kind: "broken"; readonly faults: readonly RowFault[] };

/** What has come of the rows so far. */
export type Tally = Omit<ImportReport, "importId" | "mode" | "isDryRun"> & {
  /** Created bits whose rows had no id. */
  readonly newIds: number;
};

export const EMPTY_TALLY: Tally = {
  rows: 0,
  created: 0,
  changed: 0,
  unchanged: 0,
  refused: 0,
  newIds: 0,
  faults: [],
  faultsLeftOut: 0,
  isComplete: true,
};

/** The tally with what came of the row that begins on a line. */
export function counted(tally: Tally, line: number, outcome: RowOutcome): Tally {
  switch (outcome.kind) {
    case "created":
      return {
        ...tally,
        rows: tally.rows + 1,
        created: tally.created + 1,
        newIds: tally.newIds + (outcome.isNewId ? 1 : 0),
      };
    case "changed":
    case "unchanged":
      return { ...tally, rows: tally.rows + 1, [outcome.kind]: tally[outcome.kind] + 1 };
    case "refused":
      return {
        ...withFaults(tally, line, outcome.faults, MOST_FAULTS_LISTED - tally.faults.length),
        rows: tally.rows + 1,
        refused: tally.refused + 1,
      };
    case "broken":
      // What ends the reading is reported whatever came before.
      return { ...withFaults(tally, line, outcome.faults, MOST_FAULTS_LISTED), isComplete: false };
  }
}

/** The tally with how a row's quantities were read. */
export function withReadings(tally: Tally, line: number, readings: readonly Reading[]): Tally {
  const { readings: listed = [], readingsLeftOut = 0 } = tally;
  const more = readings.slice(0, Math.max(0, MOST_READINGS_LISTED - listed.length));
  return {
    ...tally,
    readings: more.length === 0 ? listed : [...listed, ...more.map((reading) => ({ line, ...reading }))],
    readingsLeftOut: readingsLeftOut + readings.length - more.length,
  };
}

function withFaults(tally: Tally, line: number, faults: readonly RowFault[], most: number): Tally {
  const listed = faults.slice(0, Math.max(0, most)).map((fault) => ({ line, ...fault }));
  return {
    ...tally,
    faults: [...tally.faults, ...listed],
    faultsLeftOut: tally.faultsLeftOut + faults.length - listed.length,
  };
}
