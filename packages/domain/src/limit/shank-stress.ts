import { rpmAtSwingingForce } from "../bit/rotation.ts";
import { bendingStressMPa } from "../bit/shank.ts";
import { clampedCriticalRpm } from "./critical-speed.ts";
import { defineLimit } from "./limit.ts";

/**
 * Bending of the shank at the collet by the pull of unbalance and its swing, in the share of the allowed stress that the heaviest
 * pass leaves it: passes are kept to the other share, so the two hold together.
 */
export const shankStress = defineLimit({
  name: "shank-stress",
  strength: "hard",
  formula:
    "σ = 32·F·L/(π·d³), F = m·e·ω² / (1 − (n / n critical)²) ≤ allowed stress less the share of the cutting force",
  source: "beam theory (standard); the stress allowed and its shares are ours",
  restsOn: ["mass", "run-out"],
  figure: (context) => {
    const { bit, massHighG, runOutMm, overhangMm, policy } = context;
    if (runOutMm === 0) return undefined;
    const { shankDiameterMm } = bit;
    const { shankStressMaxMPa, shankStressCuttingShareRatio } = policy;
    const leftMPa = shankStressMaxMPa * (1 - shankStressCuttingShareRatio);
    const forceN = leftMPa / bendingStressMPa({ shankDiameterMm, lengthMm: overhangMm }, 1);
    return {
      rpm: rpmAtSwingingForce(forceN, {
        massG: massHighG,
        eccentricityMm: runOutMm / 2,
        criticalRpm: clampedCriticalRpm(context),
      }),
      values: { shankDiameterMm, overhangMm, leftMPa },
    };
  },
  raisedBy: () => ({ code: "less-stick-out" }),
});
