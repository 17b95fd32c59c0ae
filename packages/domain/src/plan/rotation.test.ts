import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import { bitSolid } from "../bit/solid.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { rotationAt } from "./rotation.ts";

const straight: Bit = {
  form: { kind: "straight", diameterMm: 20, cuttingLengthMm: 25 },
  shankDiameterMm: 12.7,
  wings: 2,
};

describe("what spinning does, in the units shown", () => {
  // 12 000 rpm: ω = 400π = 1256.637 rad/s; the rim at 10 mm runs at 4π = 12.566 371 m/s.
  const rotation = rotationAt(
    {
      bit: straight,
      solid: bitSolid(straight),
      router: { minRpm: 10_000, maxRpm: 22_000 },
      policy: DEFAULT_POLICY,
      trials: [],
      massHighG: 250,
      headMassHighG: 250,
      runOutMm: 0.0508,
      overhangMm: 30,
    },
    12_000,
  );

  it("stress in a steel ring: ρv² = 7850·(4π)² = 1.239 622 MPa; with ν 0.3 a bored disc bears 0.825 of it", () => {
    expect(rotation.rimStressMPa).toBeCloseTo(1.239_622_3, 5);
    expect(rotation.bodyStressMPa).toBeCloseTo(0.825 * 1.239_622_3, 5);
  });

  it("a tip of 2 g: m·v²/r = 31.582 734 N, ½·m·v² = 0.157 913 67 J", () => {
    expect(rotation.tipForceN).toBeCloseTo(31.582_734, 5);
    expect(rotation.tipEnergyJ).toBeCloseTo(0.157_913_67, 7);
  });

  it("the unbalance against a weight of 0.25·9.80665 = 2.451 662 5 N", () => {
    expect(rotation.unbalanceForceN / rotation.unbalancePerWeightRatio).toBeCloseTo(2.451_662_5, 9);
  });
});
