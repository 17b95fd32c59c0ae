import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { woodById } from "../wood/registry.ts";
import { chipFindings } from "./chip-findings.ts";
import { makePlan } from "./make-plan.ts";
import type { PlanInput } from "./plan.ts";
import { planProfiles } from "./profiles.ts";

const GROOVE: PlanInput = {
  bit: {
    form: { kind: "straight", diameterMm: 20, cuttingLengthMm: 25 },
    shankDiameterMm: 12.7,
    wings: 2,
  },
  router: { minRpm: 10_000, maxRpm: 22_000, dial: { marks: { first: 1, last: 6 }, steps: 2 } },
  mounting: "table",
  wood: cherry(),
  cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
  policy: DEFAULT_POLICY,
};

describe("a chip that may scorch (ours)", () => {
  const { passes, speed } = makePlan(GROOVE);
  const found = (chipMeanMm: number) => {
    if (speed.setting === undefined) throw new Error("an ordinary groove is planned");
    const thinned = passes.map((planned) => ({ ...planned, load: { ...planned.load, chipMeanMm } }));
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
