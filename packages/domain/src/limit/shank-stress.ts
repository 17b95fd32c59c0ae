import { rpmOf } from "../bit/rotation.ts";
import { bendingStressMPa } from "../bit/shank.ts";
import { defineLimit } from "./limit.ts";

/**
 * Bending of the shank at the collet by the pull of unbalance, in the share of the allowed stress that the heaviest
 * pass leaves it: passes are kept to the other share, so the two hold together.
 */
export const shankStress = defineLimit({
  name: "shank-stress",
  strength: "hard",
  formula: "σ = 32·m·e·ω²·L/(π·d³) ≤ allowed stress less the share of the cutting force",
  source: "beam theory (standard); the stress allowed and its shares are ours",
  restsOn: ["mass", "run-out"],
  figure: ({ bit: { shankDiameterMm }, massHighG, runOutMm, overhangMm, policy }) => {
    if (runOutMm === 0) return undefined;
    const { shankStressMaxMPa, shankStressCuttingShareRatio } = policy;
    const leftMPa = shankStressMaxMPa * (1 - shankStressCuttingShareRatio);
    const forceN = leftMPa / bendingStressMPa({ shankDiameterMm, lengthMm: overhangMm }, 1);
    return {
      rpm: rpmOf(Math.sqrt(forceN / ((massHighG / 1000) * (runOutMm / 2000)))),
      values: { shankDiameterMm, overhangMm, leftMPa },
    };
  },
  raisedBy: () => ({ code: "less-stick-out" }),
});
