import { rpmOf } from "../bit/rotation.ts";
import { defineLimit } from "./limit.ts";

/**
 * The pull of a mass off its axis, held against the policy's force and balance grade. The eccentricity is half the
 * run-out; a bit that was not weighed is taken at its heavier edge.
 */
export const unbalance = defineLimit({
  name: "unbalance",
  strength: "hard",
  formula: "n from F = m·e·ω² and G = e·ω, e = run-out / 2",
  source:
    "mechanics; grade as in ISO 21940-11, which lists none for cutting tools; force and grade allowed are ours",
  restsOn: ["mass", "run-out"],
  figure: ({ massHighG, runOutMm, policy }) => {
    const eccentricityMm = runOutMm / 2;
    if (eccentricityMm === 0) return undefined;
    const { unbalanceForceMaxN, balanceGradeMaxMmPerS } = policy;
    const byForce = Math.sqrt(unbalanceForceMaxN / ((massHighG / 1000) * (eccentricityMm / 1000)));
    const byGrade = balanceGradeMaxMmPerS / eccentricityMm;
    return {
      rpm: rpmOf(Math.min(byForce, byGrade)),
      values: {
        massHighG,
        runOutMm,
        unbalanceForceMaxN,
        balanceGradeMaxMmPerS,
        heldBy: byForce <= byGrade ? ("force" as const) : ("balance-grade" as const),
      },
    };
  },
  raisedBy: ({ runOutMm }) => ({ code: "less-run-out", runOutMm: runOutMm / 2 }),
});
