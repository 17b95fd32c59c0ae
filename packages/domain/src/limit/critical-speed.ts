import { criticalSpeedRpm } from "../bit/shank.ts";
import { defineLimit, type LimitContext } from "./limit.ts";

/** The usual larger shank, mm: 1/2 in. Source: common practice. */
const LARGE_SHANK_MM = 12.7;

/**
 * First bending resonance of the head on its overhung shank. The rigid clamp gives an upper bound, so the policy takes
 * a share of it for collet and spindle, and a share of that as margin.
 */
export const criticalSpeed = defineLimit({
  name: "critical-speed",
  strength: "hard",
  formula: "n = margin · clamp factor · √(3·E·I / (m·L³))",
  source: "cantilever with an end mass (standard beam theory); clamp factor and margin are ours",
  restsOn: ["mass"],
  figure: (context) => {
    const { bit, headMassHighG, overhangMm, policy } = context;
    const { shankDiameterMm } = bit;
    const { clampFactorRatio, criticalSpeedShareMaxRatio } = policy;
    const rigidRpm = rigidCriticalRpm(context);
    return {
      rpm: rigidRpm * clampFactorRatio * criticalSpeedShareMaxRatio,
      values: {
        shankDiameterMm,
        overhangMm,
        headMassHighG,
        rigidRpm,
        clampFactorRatio,
        criticalSpeedShareMaxRatio,
      },
    };
  },
  raisedBy: ({ bit: { shankDiameterMm } }) =>
    shankDiameterMm < LARGE_SHANK_MM
      ? {
          code: "thicker-shank",
          shankDiameterMm: LARGE_SHANK_MM,
          factor: (LARGE_SHANK_MM / shankDiameterMm) ** 2,
        }
      : { code: "less-stick-out" },
});

/** First bending resonance in rpm with what collet and spindle give. */
export function clampedCriticalRpm(context: LimitContext): number {
  return rigidCriticalRpm(context) * context.policy.clampFactorRatio;
}

function rigidCriticalRpm({ bit: { shankDiameterMm }, headMassHighG, overhangMm }: LimitContext): number {
  return criticalSpeedRpm({ shankDiameterMm, lengthMm: overhangMm }, headMassHighG);
}
