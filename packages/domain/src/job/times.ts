import type { Policy } from "../policy/policy.ts";
import type { JobSetup } from "./set-up.ts";

/** Minutes of work, with how little and how much it may take. */
export type MinuteRange = { readonly leastMin: number; readonly usualMin: number; readonly mostMin: number };

/** What a job's time is made of. */
export type JobTimes = {
  readonly cutting: MinuteRange;
  /** Fetching each piece, laying it on, taking it off. */
  readonly handling: MinuteRange;
  readonly changingOver: MinuteRange;
  readonly total: MinuteRange;
};

type TimePolicy = Pick<Policy, "handlingSecondsPerPiece" | "jobTimeSpreadRatio">;

const SECONDS_PER_MIN = 60;

/**
 * How long the set-ups of a job take, `changeoverMin` of them for changing over. Nothing of it is measured: the range around it is the
 * policy's.
 * @example
 * const runs = [{ cut: 0, pass: 1, pieces: 40, fenceMm: 0, metresPerPiece: 0.6, secondsPerPiece: 15 }];
 * jobTimes([{ runs }], 20, DEFAULT_POLICY).total.usualMin // → 40
 */
export function jobTimes(
  setups: readonly Pick<JobSetup, "runs">[],
  changeoverMin: number,
  policy: TimePolicy,
): JobTimes {
  const runs = setups.flatMap((setup) => setup.runs);
  const cuttingS = runs.reduce((sum, { pieces, secondsPerPiece }) => sum + pieces * secondsPerPiece, 0);
  const pieces = runs.reduce((sum, run) => sum + run.pieces, 0);
  const range = (usualMin: number): MinuteRange => ({
    leastMin: usualMin * (1 - policy.jobTimeSpreadRatio),
    usualMin,
    mostMin: usualMin * (1 + policy.jobTimeSpreadRatio),
  });
  const cuttingMin = cuttingS / SECONDS_PER_MIN;
  const handlingMin = (pieces * policy.handlingSecondsPerPiece) / SECONDS_PER_MIN;
  return {
    cutting: range(cuttingMin),
    handling: range(handlingMin),
    changingOver: range(changeoverMin),
    total: range(cuttingMin + handlingMin + changeoverMin),
  };
}
