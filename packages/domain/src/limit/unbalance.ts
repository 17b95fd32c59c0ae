import { rpmAtSwingingForce, rpmOf } from "../bit/rotation.ts";
import { clampedCriticalRpm } from "./critical-speed.ts";
import { defineLimit } from "./limit.ts";

/**
 * The pull of a mass off its axis, with the swing it causes, held against the policy's force and balance grade. The eccentricity is half the
 * run-out; a bit that was not weighed is taken at its heavier edge.
 */
export const unbalance = defineLimit({
  name: "unbalance",
  strength: "hard",
  formula: "n from F = m·e·ω² / (1 − (n / n critical)²) and G = e·ω, e = run-out / 2",
  source:
    "mechanics; swing of a flexible shaft (Jeffcott rotor); grade as in ISO 21940-11, which lists none for cutting tools; force and grade allowed are ours",
  restsOn: ["mass", "run-out"],
  figure: (context) => {
    const { massHighG, runOutMm, policy } = context;
    const eccentricityMm = runOutMm / 2;
    if (eccentricityMm === 0) return undefined;
    const { unbalanceForceMaxN, balanceGradeMaxMmPerS } = policy;
    const criticalRpm = clampedCriticalRpm(context);
    const byForceRpm = rpmAtSwingingForce(unbalanceForceMaxN, {
      massG: massHighG,
      eccentricityMm,
      criticalRpm,
    });
    const byGradeRpm = rpmOf(balanceGradeMaxMmPerS / eccentricityMm);
    return {
      rpm: Math.min(byForceRpm, byGradeRpm),
      values: {
        massHighG,
        runOutMm,
        criticalRpm,
        unbalanceForceMaxN,
        balanceGradeMaxMmPerS,
        heldBy: byForceRpm <= byGradeRpm ? ("force" as const) : ("balance-grade" as const),
      },
    };
  },
  raisedBy: ({ runOutMm }) => ({ code: "less-run-out", runOutMm: runOutMm / 2 }),
});
