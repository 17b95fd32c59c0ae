import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import { bitSolid } from "../bit/solid.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { woodById } from "../wood/registry.ts";
import { makePlan } from "./make-plan.ts";
import type { PlanInput } from "./plan.ts";
import { planProfiles } from "./profiles.ts";
import { rotationAt } from "./rotation.ts";
import { chipFindings } from "./surface-findings.ts";
import { usualCut } from "./usual-cut.ts";

const straight: Bit = {
  form: { kind: "straight", diameterMm: 20, cuttingLengthMm: 25 },
  shankDiameterMm: 12.7,
  wings: 2,
};

const GROOVE: PlanInput = {
  bit: straight,
  router: { minRpm: 10_000, maxRpm: 22_000, dial: { marks: { first: 1, last: 6 }, steps: 2 } },
  mounting: "table",
  wood: cherry(),
  cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
  policy: DEFAULT_POLICY,
};

describe("the cut bits are compared by (ours)", () => {
  const run = [{ lengthMm: 1000, grain: "long" }];

  it("a groove a quarter of its diameter deep for a straight bit: 5 mm of 20 mm", () => {
    expect(usualCut(straight)).toEqual({ kind: "groove", edges: run, depthMm: 5 });
  });

  it("1.5 mm, about 1/16 in, for a flush-trim bit", () => {
    const form = { kind: "flush-trim", diameterMm: 12.7, cuttingLengthMm: 25.4, bearing: "tip" } as const;
    expect(usualCut({ ...straight, form })).toEqual({
      kind: "trim",
      edges: run,
      overhangMm: 1.5,
      thicknessMm: 25.4,
    });
  });

  it("the whole profile in stock of 150 mm for the rest", () => {
    const form = { kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 } as const;
    expect(usualCut({ ...straight, form })).toEqual({ kind: "edge", edges: run, thicknessMm: 150 });
  });
});

describe("what spinning does, in the units told", () => {
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

describe("a chip that may scorch (ours)", () => {
  const { passes, speed } = makePlan(GROOVE);
  const found = (chipMeanMm: number) => {
    if (speed.setting === undefined) throw new Error("an ordinary groove is planned");
    const thinned = passes.map((planned) => ({ ...planned, chipMeanMm }));
    return chipFindings(thinned, speed.setting, DEFAULT_POLICY).map(({ code }) => code);
  };

  it("is under twice the thinnest of 0.005 mm", () => {
    expect(found(0.00995)).toEqual(["burn-risk"]);
    expect(found(0.01005)).toEqual([]);
  });
});

describe("the work shown under a groove (ours)", () => {
  it("reaches 10 mm beyond its depth of 6 mm, and 10 mm beside a bit that is 20 mm wide", () => {
    const points = planProfiles(GROOVE, makePlan(GROOVE))
      .flat()
      .flatMap(({ boundary }) => boundary);
    expect(Math.max(...points.map(({ zMm }) => zMm))).toBeCloseTo(16, 9);
    expect(Math.max(...points.map(({ xMm }) => xMm))).toBeCloseTo(20, 9);
  });
});

function cherry() {
  const found = woodById("black-cherry");
  if (found === undefined) throw new Error("no cherry");
  return found;
}
