import { type Bit, bitSolid, DEFAULT_POLICY, makePlan, type PlanInput, WOODS } from "@rimwise/domain";
import { describe, expect, it } from "vitest";

// Facts of the trade. All of this page: common practice.

const G_PER_OUNCE = 28.349523125;
const cherry = WOODS.find(({ id }) => id === "black-cherry") ?? WOODS[0];
if (cherry === undefined) throw new Error("no woods");

const PANEL_BIT: Bit = {
  form: {
    kind: "panel-raising",
    diameterMm: 88.9,
    pilotDiameterMm: 12.7,
    profileHeightMm: 13,
    face: "cove",
    tongueWidthMm: 8,
    shoulderHeightMm: 1.6,
  },
  shankDiameterMm: 12.7,
  wings: 2,
};
const WIDE_STRAIGHT: Bit = {
  form: { kind: "straight", diameterMm: 50.8, cuttingLengthMm: 31.75 },
  shankDiameterMm: 12.7,
  wings: 2,
};
const PROFILE_BIT: Bit = {
  form: { kind: "round-over", diameterMm: 63.5, radiusMm: 25.4 },
  shankDiameterMm: 12.7,
  wings: 2,
};
const SMALL_STRAIGHT: Bit = {
  form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
  shankDiameterMm: 12.7,
  wings: 2,
};

const edges = [
  { lengthMm: 300, grain: "end" as const },
  { lengthMm: 450, grain: "long" as const },
  { lengthMm: 300, grain: "end" as const },
  { lengthMm: 450, grain: "long" as const },
];
const router = {
  minRpm: 10000,
  maxRpm: 22000,
  dial: { marks: { first: 1, last: 6 }, steps: 2 },
  inputPowerW: 1800,
};
const base: PlanInput = {
  bit: PANEL_BIT,
  router,
  mounting: "table",
  wood: cherry,
  cut: { kind: "panel", edges, thicknessMm: 19 },
  policy: DEFAULT_POLICY,
};
const groove = { kind: "groove" as const, edges, depthMm: 6 };
const edge = { kind: "edge" as const, edges, thicknessMm: 30 };

describe("estimated masses against what such bits weigh", () => {
  // The trade's figures are round ones, and a plan treats an unweighed bit as up to 30 % heavier.
  it.each([
    ["a 3-1/2 in panel bit, about 12 oz: within 1 %", PANEL_BIT, 12, 0.01],
    ["a 2 in straight bit, 9 oz: within 6 %", WIDE_STRAIGHT, 9, 0.06],
    ["a 2-1/2 in profile bit, just under 4 oz: within 2 %", PROFILE_BIT, 3.9, 0.02],
  ])("%s", (_, bit, ounces, within) => {
    const estimatedOunces = bitSolid(bit).estimatedMassG / G_PER_OUNCE;
    const error = estimatedOunces / ounces - 1;
    expect(Math.abs(error), `${estimatedOunces.toFixed(2)} oz against ${ounces} oz`).toBeLessThan(within);
  });

  it("a weighed mass wins over the estimate, and the inertia follows it", () => {
    const estimated = bitSolid(WIDE_STRAIGHT);
    const weighed = bitSolid({ ...WIDE_STRAIGHT, massG: 2 * estimated.estimatedMassG });
    expect(weighed.massSource).toBe("weighed");
    expect(weighed.polarInertiaKgM2 / estimated.polarInertiaKgM2).toBeCloseTo(2, 12);
  });
});

describe("what may run in a handheld router", () => {
  it.each([
    [
      "3-1/2 in and about 12 oz: table only",
      { ...PANEL_BIT, massG: 12 * G_PER_OUNCE },
      base.cut,
      "table-only",
    ],
    [
      "2 in straight of 9 oz: not cleared, although its diameter is",
      { ...WIDE_STRAIGHT, massG: 9 * G_PER_OUNCE },
      groove,
      "table-only",
    ],
    [
      "2-1/2 in profile under 4 oz: at the limit",
      { ...PROFILE_BIT, massG: 3.9 * G_PER_OUNCE },
      edge,
      "handheld-with-care",
    ],
    ["1/2 in straight: fine", SMALL_STRAIGHT, groove, "handheld"],
  ])("%s", (_, bit, cut, allowed) => {
    expect(makePlan({ ...base, bit, cut }).mounting.allowed).toBe(allowed);
  });

  it("the 2 in straight bit is held back by its mass, not by its diameter", () => {
    const { reasons } = makePlan({
      ...base,
      bit: { ...WIDE_STRAIGHT, massG: 9 * G_PER_OUNCE },
      cut: groove,
    }).mounting;
    expect(reasons.find(({ code }) => code === "diameter")?.clearance).not.toBe("table-only");
    expect(reasons.find(({ code }) => code === "mass")?.clearance).toBe("table-only");
  });

  it("the big panel bit is refused handheld and planned with care in a table", () => {
    const refused = makePlan({ ...base, mounting: "handheld" });
    expect(refused.verdict).toBe("do-not-run");
    expect(refused.findings.map(({ code }) => code)).toContain("table-only");
    expect(makePlan(base).verdict).toBe("run-with-care");
  });
});

describe("a large panel profile", () => {
  const plan = makePlan(base);

  it("takes two or three roughing steps and a light last one", () => {
    const rough = plan.passes.filter(({ pass }) => pass.kind === "rough").length;
    expect([2, 3]).toContain(rough);
    expect(plan.passes.at(-1)?.pass.kind).toBe("finish");
    // About 1/32 in, from the last tenth of a millimetre that can be set within it.
    const biteMm = plan.passes.at(-1)?.pass.geometry.biteMm;
    expect(biteMm).toBeLessThanOrEqual(0.8);
    expect(biteMm).toBeGreaterThan(0.7);
  });

  it("cuts every edge at one setting before the next, end grain first", () => {
    const cuts = plan.steps.flatMap((step) => (step.code === "cut-edges" ? [step] : []));
    expect(cuts.map(({ pass, grain }) => `${pass} ${grain}`)).toEqual(
      plan.passes.flatMap(({ pass: { number } }) => [`${number} end`, `${number} long`]),
    );
    expect(cuts[0]?.edges).toEqual([1, 3]);
    expect(cuts[0]?.direction).toBe("work-right-to-left");
  });

  it("does not run on a router that cannot go slow enough, which is said with its numbers", () => {
    const fast = makePlan({
      ...base,
      router: { minRpm: 16000, maxRpm: 27000, dial: { marks: { first: 1, last: 5 }, steps: 1 } },
    });
    expect(fast.verdict).toBe("do-not-run");
    expect(fast.findings[0]).toMatchObject({ code: "router-too-fast", slowestRpm: 16000, limitRpm: 12000 });
  });

  it("stays under a marked maximum whatever else would allow", () => {
    const marked = makePlan({ ...base, bit: { ...PANEL_BIT, markedMaxRpm: 11500 } });
    expect(marked.speed.bindingLimit).toBe("marked-maximum");
    expect(marked.speed.setting?.rpmHighest).toBeLessThanOrEqual(11500);
  });
});
