import { chipOf, makePlan } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planInputs } from "./arbitraries.ts";

describe("a feed that the hand holds back", () => {
  it("is what every figure of the pass rests on: chip, force, torque and power", () => {
    let boundCount = 0;
    fc.assert(
      fc.property(planInputs, (input) => {
        const wings = 4;
        const { passes, speed } = makePlan({ ...input, bit: { ...input.bit, wings } });
        for (const { pass, feed, load, powerW } of passes) {
          const { feedMPerMin, feedPerToothMm } = feed;
          const chip = chipOf(feedPerToothMm, load.immersionRatio);
          expect(load.chipMeanMm).toBeCloseTo(chip.meanMm, 9);
          expect(load.chipGreatestMm).toBeCloseTo(chip.greatestMm, 9);
          expect(load.peakForceN).toBeLessThanOrEqual(pass.load.peakForceN * (1 + 1e-9));
          // P = M·ω, mean torque times angular speed (mechanics, standard).
          const byTorqueW = (load.torqueNm * 2 * Math.PI * (speed.setting?.rpm ?? Number.NaN)) / 60;
          expect(powerW / byTorqueW).toBeCloseTo(1, 6);
          if (feedMPerMin > input.policy.handFeedMaxMPerMin * (1 - 1e-9)) boundCount += 1;
        }
      }),
      { numRuns: 600 },
    );
    expect(boundCount).toBeGreaterThan(20);
  });

  it("takes at least a second for the shortest edge", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        const edges = [{ lengthMm: 20, grain: "long" as const }];
        for (const { secondsPerEdge } of makePlan({ ...input, cut: { ...input.cut, edges } }).passes)
          expect(Math.min(...secondsPerEdge)).toBeGreaterThanOrEqual(1);
      }),
      { numRuns: 300 },
    );
  });
});
