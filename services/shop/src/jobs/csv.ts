import { stringify } from "csv-stringify/sync";
import { withoutFormula } from "../imports/formula.ts";
import type { JobRecord } from "./schema.ts";

const COLUMNS = [
  "setup",
  "bit",
  "bitId",
  "routerId",
  "mounting",
  "mark",
  "rpm",
  "heightMm",
  "fenceMm",
  "pass",
  "part",
  "pieces",
  "metres",
  "secondsPerPiece",
  "changeMin",
] as const;

/** The day's list of a job as CSV: one row for each part at each set-up, in the order of work. */
export function jobAsCsv({ work }: JobRecord): string {
  const nameOf = new Map(work.bits.map(({ bitId, name }) => [bitId, name]));
  const rows = work.setups.flatMap((setup) =>
    setup.runs.map((run, index) => [
      setup.number,
      withoutFormula(nameOf.get(setup.bitId) ?? setup.bitId),
      setup.bitId,
      setup.routerId,
      setup.mounting,
      setup.mark ?? "",
      setup.rpm,
      setup.heightMm,
      setup.fenceMm ?? "",
      setup.kind,
      withoutFormula(run.name),
      run.pieces,
      run.metres,
      run.secondsPerPiece,
      index === 0 ? setup.changeMin : 0,
    ]),
  );
  return stringify([[...COLUMNS], ...rows], { record_delimiter: "\r\n", quoted_match: /[\r\n]/ });
}
