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

  // What the trade does: a sharp bit that never rests, a light last pass, and one step slower on the dial once it scorches. No speed is
  // given up before: a slower edge rubs more.
  it.each(["black-cherry", "sugar-maple", "american-beech", "yellow-birch"])(
    "%s burns, and the plan says what to do against it",
    (id) => {
      const plan = planIn(id);
      const sentences = said(plan).join("\n");
      expect(sentences).toMatch(
        /Keep moving as long as the bit turns: this wood burns.+sharp bit.+one mark slower/,
      );
      expect(sentences).toMatch(/lighter last pass/);
      expect(plan.speed.setting?.rpm).toBe(planIn("white-oak").speed.setting?.rpm);
    },
  );

  it("burns, and a deep cut in it ends with a light pass", () => {
    const wood = woodById("black-cherry");
    if (wood === undefined) throw new Error("no cherry");
    const cut = { kind: "rabbet", depthMm: 9, widthMm: 9, edges: EDGES } as const;
    const { passes } = makePlan({
      ...{ bit: STRAIGHT, router: DIAL, mounting: "table", wood, cut, policy: DEFAULT_POLICY },
    });
    const [last, before] = [...passes].reverse();
    expect(last?.pass.kind).toBe("finish");
    expect(last?.pass.geometry.removedAreaMm2).toBeLessThan(
      (before?.pass.geometry.removedAreaMm2 ?? 0) / 1.3,
    );
  });

  it("does not burn: the plan promises no slower mark", () => {
    expect(said(planIn("white-oak")).join("\n")).not.toMatch(/one mark slower/);
  });

  it.each([
    ["has one speed", { minRpm: 16_000, maxRpm: 16_000 }, /if it scorches, clean the bit/],
    ["has no dial", { minRpm: 8000, maxRpm: 16_000 }, /if it scorches, go slower/],
  ] as const)("burns in a router that %s: no mark is named", (_, router, advice) => {
    const sentences = said(planIn("black-cherry", { ...router, inputPowerW: 2200 })).join("\n");
    expect(sentences).toMatch(advice);
    expect(sentences).not.toMatch(/mark slower/);
  });
});
