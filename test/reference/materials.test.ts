import { DEFAULT_POLICY, makePlan, type Router, woodById } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, EDGES, said } from "./set-up-plans.ts";

const DIAL: Router = {
  minRpm: 8000,
  maxRpm: 24_000,
  dial: { marks: { first: 1, last: 6 }, steps: 2 },
  inputPowerW: 2200,
};
const STRAIGHT = bitOf({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 });

function planIn(woodId: string, router: Router = DIAL) {
  const wood = woodById(woodId);
  if (wood === undefined) throw new Error(`no wood ${woodId}`);
  const cut = { kind: "groove", depthMm: 3, edges: EDGES } as const;
  return makePlan({ bit: STRAIGHT, router, mounting: "table", wood, cut, policy: DEFAULT_POLICY });
}

// Plastics are cut slower, for they melt; cherry, maple and other dense light woods burn: no pause, a light last pass. Common practice.
describe("a material that suffers from heat", () => {
  it("melts: it is cut slower than wood, and the plan says why", () => {
    const { speed, limits, verdict } = planIn("polyethylene");
    expect(verdict).not.toBe("do-not-run");
    expect(limits.map(({ name }) => name)).toContain("material");
    expect(speed.setting?.rpm).toBeLessThanOrEqual(18_000);
    expect(speed.setting?.rpm).toBeLessThan(planIn("white-oak").speed.setting?.rpm ?? 0);
  });

  it("never stops a plan: a router that cannot go so slow is used at its slowest", () => {
    const { verdict, speed } = planIn("polyethylene", { minRpm: 22_000, maxRpm: 22_000, inputPowerW: 2200 });
    expect(verdict).not.toBe("do-not-run");
    expect(speed.setting?.rpm).toBe(22_000);
  });

  it.each(["black-cherry", "sugar-maple"])("%s burns, and the plan says what to do against it", (id) => {
    expect(said(planIn(id)).join("\n")).toMatch(/burns wherever the bit rests.+one mark slower/);
    expect(said(planIn("white-oak")).join("\n")).not.toMatch(/one mark slower/);
  });
});
