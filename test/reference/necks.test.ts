import { makePlan } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, EDGES, inputOf } from "./set-up-plans.ts";

// A rod bends most where it is thin and far from the force: σ = 32·F·L/(π·d³), τ = 16·M/(π·d³), √(σ² + 3τ²) (beam theory and von Mises, standard).
describe("the stress of a bit that is thinner than its shank", () => {
  const stressOf = (diameterMm: number, forceN: number, lengthMm: number, radiusMm: number) => {
    const bending = (32 * forceN * lengthMm) / (Math.PI * diameterMm ** 3);
    const torsion = (16 * forceN * radiusMm) / (Math.PI * diameterMm ** 3);
    return Math.sqrt(bending ** 2 + 3 * torsion ** 2);
  };

  it("is that of the cutter, where a 3 mm straight bit on a half-inch shank would snap", () => {
    const bit = bitOf({ kind: "straight", diameterMm: 3, cuttingLengthMm: 12 });
    const { passes } = makePlan(inputOf(bit, { kind: "groove", depthMm: 3, edges: EDGES }));
    expect(passes.length).toBeGreaterThan(0);
    for (const { pass } of passes) {
      const { peakForceN, shankStressMPa } = pass.load;
      // Fluted, it is as strong as a rod of 0.8 of its diameter.
      expect(shankStressMPa / stressOf(2.4, peakForceN, 12, 1.5)).toBeCloseTo(1, 9);
    }
  });

  it("is that of a keyhole bit's neck, and of the shank where that is the thinnest", () => {
    const keyhole = bitOf({
      kind: "keyhole",
      diameterMm: 9.5,
      headHeightMm: 4,
      neckDiameterMm: 4.8,
      cuttingLengthMm: 11,
    });
    const [only] = makePlan(inputOf(keyhole, { kind: "groove", depthMm: 10, edges: EDGES })).passes;
    expect(only).toBeDefined();
    if (only !== undefined) {
      const { peakForceN, shankStressMPa } = only.pass.load;
      expect(shankStressMPa / stressOf(0.8 * 4.8, peakForceN, 11, 4.75)).toBeCloseTo(1, 9);
    }
    const thick = bitOf({ kind: "straight", diameterMm: 19.05, cuttingLengthMm: 25.4 });
    const [first] = makePlan(inputOf(thick, { kind: "groove", depthMm: 6, edges: EDGES })).passes;
    const load = first?.pass.load;
    expect((load?.shankStressMPa ?? 0) / stressOf(12.7, load?.peakForceN ?? 0, 35.4, 9.525)).toBeCloseTo(
      1,
      9,
    );
  });
});
