import { outlineLengthMm } from "../bit/outline.ts";
import type { BitSolid } from "../bit/solid.ts";
import type { LimitContext } from "../limit/limit.ts";
import type { PlanInput } from "./plan.ts";

/**
 * What the limits look at, each uncertain figure at its safe edge: an estimated mass at its heaviest, a run-out that was not
 * measured and a stick-out that was not measured as the policy takes them.
 */
export function limitContext(
  {
    bit,
    router,
    policy,
    trials = [],
    wood,
  }: Pick<PlanInput, "bit" | "router" | "policy" | "trials"> & Partial<Pick<PlanInput, "wood">>,
  solid: BitSolid,
): LimitContext {
  const heavier = solid.massSource === "weighed" ? 1 : 1 + policy.massEstimateToleranceRatio;
  const headLengthMm = outlineLengthMm(solid.outline);
  const stickOutMm = bit.stickOutMm ?? policy.stickOutAssumedMm;
  return {
    bit,
    solid,
    router,
    policy,
    trials,
    wood,
    massHighG: solid.massG * heavier,
    headMassHighG: solid.headMassG * heavier,
    runOutMm: bit.runOutMm ?? policy.runOutAssumedMm,
    overhangMm: stickOutMm + Math.max(headLengthMm - solid.headCentreMm, headLengthMm / 2),
  };
}
