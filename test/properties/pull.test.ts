import { bendingStressMPa, bitSolid, makePlan, outlineLengthMm } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planInputs } from "./arbitraries.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Long heads on thin shanks in a router that can be set to any speed: the swing is a large part of the pull. */
const swinging = fc
  .record({
    input: planInputs,
    diameterMm: between(12, 40),
    cuttingLengthMm: between(25, 80),
    runOutMm: between(0.005, 0.4),
    stickOutMm: between(1, 18),
  })
  .map(({ input, diameterMm, cuttingLengthMm, ...measured }) => ({
    ...input,
    bit: {
      form: { kind: "straight", diameterMm, cuttingLengthMm } as const,
      shankDiameterMm: 6,
      wings: 2,
      ...measured,
    },
    cut: { kind: "groove", depthMm: 1, edges: [{ lengthMm: 300, grain: "long" }] } as const,
    mounting: "table" as const,
    router: {
      minRpm: 3000,
      maxRpm: 30_000,
      inputPowerW: 1800,
      dial: { marks: { first: 0, last: 10 }, steps: 0 },
    },
  }));
const RUNS = { numRuns: 1500 };

// The pull with the swing of a flexible shaft (Jeffcott rotor, standard) is what the shank and the hands bear.
describe("the pull of an unbalanced bit, with the swing it causes", () => {
  it("never exceeds the greatest that the policy allows", () => {
    fc.assert(
      fc.property(swinging, (input) => {
        const { setting } = makePlan(input).speed;
        if (setting === undefined) return;
        expect(setting.rotation.unbalanceForceN).toBeLessThanOrEqual(
          input.policy.unbalanceForceMaxN * (1 + 1e-9),
        );
      }),
      RUNS,
    );
  });

  it("never bends the shank past the share of stress that the passes leave", () => {
    fc.assert(
      fc.property(swinging, (input) => {
        const { setting } = makePlan(input).speed;
        if (setting === undefined) return;
        const { bit, policy } = input;
        const solid = bitSolid(bit);
        const headMm = outlineLengthMm(solid.outline);
        const lengthMm =
          (bit.stickOutMm ?? policy.stickOutAssumedMm) + Math.max(headMm - solid.headCentreMm, headMm / 2);
        const stressMPa = bendingStressMPa(
          { shankDiameterMm: bit.shankDiameterMm, lengthMm },
          setting.rotation.unbalanceForceN,
        );
        const leftMPa = policy.shankStressMaxMPa * (1 - policy.shankStressCuttingShareRatio);
        expect(stressMPa).toBeLessThanOrEqual(leftMPa * (1 + 1e-9));
      }),
      RUNS,
    );
  });
});
