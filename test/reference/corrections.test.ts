import { correctedSetting, describeCorrection, describeStep, showIn } from "@rimwise/domain";
import { describe, expect, test } from "vitest";
import { EDGES, planOf, ROUND_OVER, STRAIGHT } from "./set-up-plans.ts";

const metric = showIn("metric");

/** The last setting of a plan and what must be measured at it. */
function finalOf(plan: ReturnType<typeof planOf>) {
  const last = plan.passes.at(-1)?.pass;
  if (last === undefined || plan.testPiece === undefined) throw new Error("nothing to measure");
  return { last, testPiece: plan.testPiece };
}

describe("a correction of a bit with a bearing on its tip", () => {
  const plan = planOf(ROUND_OVER(6.35), { kind: "edge", thicknessMm: 19, edges: EDGES });
  const { last, testPiece } = finalOf(plan);

  // Common practice: a height is measured at the cutter, not at the bearing below it.
  test("speaks of the cutter, as the step that set it does", () => {
    const corrected = correctedSetting(last, testPiece, { depthMm: 6.05 });
    const [sentence] = describeCorrection(corrected, "table", metric);
    expect(sentence).toBe(
      "0.3 mm too shallow: raise the bit 0.3 mm, so that 6.65 mm of its cutter stands above the table.",
    );
    const set = plan.steps.findLast(({ code }) => code === "set-height");
    expect(set && describeStep(set, metric)).toContain(
      "so that 6.35 mm of its cutter stands above the table",
    );
  });

  test("moves the cutter as far as the tip", () => {
    const corrected = correctedSetting(last, testPiece, { depthMm: 6.85 });
    expect(corrected.heightMm).toBeCloseTo(last.heightMm - 0.5, 9);
    expect(corrected.cutterMm).toBeCloseTo(5.85, 9);
    expect(describeCorrection(corrected, "table", metric)[0]).toMatch(
      /lower the bit 0\.5 mm, so that 5\.85 mm/,
    );
  });
});

// Geometry: a bit 19.05 mm wide makes a groove of 25 mm when its last run lies 5.95 mm over from the first.
describe("a correction of a groove that is wider than the bit", () => {
  const cut = { kind: "groove", depthMm: 6, widthMm: 25, edges: EDGES } as const;

  test("is asked for: how wide all its runs must make it", () => {
    const plan = planOf(STRAIGHT, cut);
    expect(plan.testPiece).toEqual({ depthMm: 6, widthMm: 25 });
    const piece = plan.steps.find(({ code }) => code === "test-piece");
    expect(piece && describeStep(piece, metric)).toMatch(/both runs of it.* 6 mm deep and 25 mm wide/);
  });

  test.each([
    ["table", "the fence 6.15 mm farther from you than for the first run"],
    ["handheld", "the straightedge 6.15 mm to the left of where it lay for the first run"],
  ] as const)("moves the last run alone, %s", (mounting, place) => {
    const { last, testPiece } = finalOf(planOf(STRAIGHT, cut, mounting));
    const corrected = correctedSetting(last, testPiece, { widthMm: 24.8 });
    expect(corrected.lastRunOverMm).toBeCloseTo(6.15, 9);
    expect(corrected.fenceMm).toBe(last.fenceMm);
    const [sentence] = describeCorrection(corrected, mounting, metric);
    expect(sentence).toContain(`0.2 mm too narrow: for the last run set ${place}`);
    expect(sentence).toMatch(/Leave the other runs as they are\.$/);
  });

  test("leaves every run if the width is right", () => {
    const { last, testPiece } = finalOf(planOf(STRAIGHT, cut));
    const corrected = correctedSetting(last, testPiece, { widthMm: 25 });
    expect(describeCorrection(corrected, "table", metric)).toEqual([
      "The width is right: leave every run as it is.",
    ]);
  });

  test("is refused for a groove that would be narrower than the bit", () => {
    const { last, testPiece } = finalOf(planOf(STRAIGHT, { ...cut, widthMm: 20 }));
    expect(() => correctedSetting(last, testPiece, { widthMm: 22 })).toThrow(/widthMm: out-of-range/);
    expect(() => correctedSetting(last, testPiece, { widthMm: 20.9 })).not.toThrow();
  });
});

// Geometry: 0.4 mm too narrow, and the last run's fence stands 0.4 mm farther back; the runs before it lie inside the rabbet.
test("a correction of a rabbet that is cut in runs moves the last one's fence alone", () => {
  const { last, testPiece } = finalOf(
    planOf(STRAIGHT, { kind: "rabbet", depthMm: 3, widthMm: 30, edges: EDGES }),
  );
  const corrected = correctedSetting(last, testPiece, { widthMm: 29.6 });
  const [sentence] = describeCorrection(corrected, "table", metric);
  expect(sentence).toMatch(
    /^0\.4 mm too narrow: for the last run move the fence back 0\.4 mm, until it stands behind the bit's centre by/,
  );
  expect(sentence).toMatch(/Leave the other runs as they are\.$/);
});

// Common practice: with the bit turned so that a wing stands highest, or the height is read beside it.
test.each([
  ["table", "highest"],
  ["handheld", "lowest"],
] as const)("the first height says at what it is measured, %s", (mounting, where) => {
  const { steps } = planOf(STRAIGHT, { kind: "rabbet", depthMm: 8, widthMm: 8, edges: EDGES }, mounting);
  const heights = steps.filter(({ code }) => code === "set-height").map((step) => describeStep(step, metric));
  expect(heights.length).toBeGreaterThan(1);
  expect(heights[0]).toContain(`measured with a wing turned to where it stands ${where}`);
  for (const later of heights.slice(1)) expect(later).not.toContain("wing");
});
