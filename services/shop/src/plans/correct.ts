import { correctedSetting, describeCorrection, roundTo, showIn, type TestPiece } from "@rimwise/domain";
import { notValid, Problem } from "../problems/problem.ts";
import { type Decision, nextVersion, replacement } from "../store/changes.ts";
import { planKind } from "./kind.ts";
import { DECIMALS } from "./rounding.ts";
import { MOST_CORRECTIONS, type PlanRecord } from "./schema.ts";
import type { PlanCorrection } from "./test-piece-schema.ts";

/**
 * A stored plan with one more correction: the setting the last test piece was cut at, put right by what was measured on it. Throws a
 * problem for a plan that must not be run or has nothing to measure.
 */
export function correctPlan(
  record: PlanRecord,
  measured: TestPiece,
  units: "metric" | "imperial" | undefined,
  at: string,
): Decision<PlanRecord> {
  const { plan, corrections = [], request } = record;
  const last = corrections.at(-1) ?? plan.passes.at(-1);
  if (last === undefined || plan.testPiece === undefined) {
    throw new Problem("invalid-state", `Plan ${record.id} has no test piece to measure.`);
  }
  if (corrections.length >= MOST_CORRECTIONS) {
    const message = "So many test pieces have not put this setting right. Look for what moves.";
    throw notValid([{ in: "body", pointer: "", message, accepted: `${MOST_CORRECTIONS} corrections` }]);
  }
  const corrected = correctedSetting(last, plan.testPiece, measured);
  const correction: PlanCorrection = {
    measured,
    heightMm: roundTo(corrected.heightMm, DECIMALS.mm),
    fenceMm: roundTo(corrected.fenceMm, DECIMALS.mm),
    texts: describeCorrection(corrected, request.mounting, showIn(units ?? "both")),
    at,
  };
  const after: PlanRecord = { ...nextVersion(record, at), corrections: [...corrections, correction] };
  return { record: after, changes: [replacement(planKind, record, after, "corrected")] };
}
