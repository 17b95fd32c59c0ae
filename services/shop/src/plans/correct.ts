import {
  correctedSetting,
  DomainError,
  describeCorrection,
  faultsUnder,
  type MadeSetting,
  type Mounting,
  roundTo,
  showIn,
  type TestPiece,
} from "@rimwise/domain";
import { notValid, Problem } from "../problems/problem.ts";
import { type Decision, nextVersion, replacement } from "../store/changes.ts";
import type { PlanAnswer } from "./answer-schema.ts";
import { planKind } from "./kind.ts";
import { DECIMALS } from "./rounding.ts";
import { MOST_CORRECTIONS, type PlanRecord } from "./schema.ts";
import type { CutAt, PlanCorrection } from "./test-piece-schema.ts";

/** How a correction is written, and when it was asked for. */
type Written = {
  readonly mounting: Mounting;
  readonly units: "metric" | "imperial" | undefined;
  readonly at: string;
};

/**
 * A stored plan with one more correction: the setting the last test piece was cut at, put right by what was measured on it. Throws a
 * problem for a plan that must not be run or has nothing to measure.
 */
export function correctPlan(record: PlanRecord, measured: TestPiece, at: string): Decision<PlanRecord> {
  const { plan, corrections = [], request } = record;
  const last = plan.passes.at(-1);
  if (last === undefined || plan.testPiece === undefined) {
    throw new Problem("invalid-state", `Plan ${record.id} has no test piece to measure.`);
  }
  if (corrections.length >= MOST_CORRECTIONS) {
    const message = "So many test pieces have not put this setting right. Look for what moves.";
    throw notValid([{ in: "body", pointer: "", message, accepted: `${MOST_CORRECTIONS} corrections` }]);
  }
  const written = { mounting: request.mounting, units: request.setIn, at };
  const correction = correctionOf({ ...last, ...corrections.at(-1) }, plan.testPiece, measured, written);
  const after: PlanRecord = { ...nextVersion(record, at), corrections: [...corrections, correction] };
  return { record: after, changes: [replacement(planKind, record, after, "corrected")] };
}

/**
 * The same for a plan that nobody keeps: its final setting, or the one the test piece was cut at, put right. Throws a problem for a plan
 * that must not be run or has nothing to measure.
 */
export function previewedCorrection(
  { passes, testPiece }: Pick<PlanAnswer, "passes" | "testPiece">,
  measured: TestPiece,
  cutAt: CutAt | undefined,
  written: Written,
): PlanCorrection {
  const last = passes.at(-1);
  if (last === undefined || testPiece === undefined) {
    const message = "This plan has no test piece to measure.";
    const accepted = "the request of a plan that may be run and asks for a test piece";
    throw notValid([{ in: "body", pointer: "/measured", message, accepted }]);
  }
  try {
    return correctionOf(settingCutAt(last, cutAt), testPiece, measured, written);
  } catch (error) {
    if (error instanceof DomainError) throw new DomainError(faultsUnder("/measured", error.faults));
    throw error;
  }
}

/** The setting of a test piece that was cut at another than the plan's, after a correction. The bearing on the tip is as high as ever. */
function settingCutAt(
  planned: MadeSetting,
  { heightMm = planned.heightMm, ...cutAt }: CutAt = {},
): MadeSetting {
  const { cutterMm } = planned;
  return {
    ...planned,
    ...cutAt,
    heightMm,
    ...(cutterMm !== undefined && { cutterMm: cutterMm + heightMm - planned.heightMm }),
  };
}

function correctionOf(
  made: MadeSetting,
  wanted: TestPiece,
  measured: TestPiece,
  { mounting, units, at }: Written,
): PlanCorrection {
  const corrected = correctedSetting(made, wanted, measured);
  const { heightMm, cutterMm, fenceMm, lastRunOverMm } = corrected;
  return {
    measured,
    heightMm: roundTo(heightMm, DECIMALS.mm),
    ...(cutterMm !== undefined && { cutterMm: roundTo(cutterMm, DECIMALS.mm) }),
    fenceMm: roundTo(fenceMm, DECIMALS.mm),
    ...(lastRunOverMm !== undefined && { lastRunOverMm: roundTo(lastRunOverMm, DECIMALS.mm) }),
    texts: describeCorrection(corrected, mounting, showIn(units ?? "both")),
    at,
  };
}
