import { describeStep, planProfiles, showIn } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, EDGES, inputOf, planOf, STRAIGHT } from "./set-up-plans.ts";

// A straight bit of radius R cuts a rabbet w wide with its axis R − w behind the fence face; negative is past it (geometry).
// Up to the bit's diameter in one run of width, beyond in several (common practice).
describe("a rabbet with a straight bit", () => {
  const rabbet = (widthMm: number) => ({ kind: "rabbet", depthMm: 3, widthMm, edges: EDGES }) as const;

  it.each([
    [6, 3.525],
    [9.525, 0],
    [14, -4.475],
    [19.05, -9.525],
  ])("%f mm wide: fence %f mm", (widthMm, fenceMm) => {
    for (const mounting of ["table", "handheld"] as const) {
      const plan = planOf(STRAIGHT, rabbet(widthMm), mounting);
      expect(plan.verdict).not.toBe("do-not-run");
      const fences = plan.steps.flatMap((step) => (step.code === "set-fence" ? [step.fenceMm] : []));
      expect(fences).toHaveLength(1);
      expect(fences[0]).toBeCloseTo(fenceMm, 9);
    }
  });

  it("says where a fence stands that is past the axis", () => {
    const sentences = planOf(STRAIGHT, rabbet(14)).steps.map((step) => describeStep(step, showIn("metric")));
    expect(sentences.join(" ")).toMatch(
      /Set the fence behind the bit's centre by 4\.48 mm, so that the bit reaches 14 mm past it\./,
    );
  });

  it("wider than the bit is cut in runs, each with wood for less than the bit's width, the last at the exact width", () => {
    const plan = planOf(STRAIGHT, rabbet(30));
    for (const { pass, secondsPerEdge, feed } of plan.passes) {
      const fences = plan.steps.flatMap((step) =>
        step.code === "set-fence" && step.pass === pass.number ? [step.fenceMm] : [],
      );
      expect(fences).toHaveLength(2);
      expect(fences[0]).toBeCloseTo(9.525 - 15, 0);
      expect(fences[1]).toBeCloseTo(9.525 - 30, 9);
      // 0.6 m once for each run.
      expect(secondsPerEdge[0]).toBeCloseTo((2 * 0.6 * 60) / feed.feedMPerMin, 6);
      for (const fenceMm of fences.slice(0, -1)) expect((fenceMm * 10) % 1).toBeCloseTo(0, 6);
    }
    const input = inputOf(STRAIGHT, rabbet(30));
    const points = planProfiles(input, plan).at(-1)?.[0]?.boundary ?? [];
    expect(points.some(({ xMm, zMm }) => Math.abs(xMm - 30) < 1e-9 && Math.abs(zMm - 3) < 1e-9)).toBe(true);
  });

  it("with a bearing is no wider than the bearing gives", () => {
    const bit = bitOf({ kind: "rabbet", diameterMm: 31.75, pilotDiameterMm: 12.7, cuttingLengthMm: 12.7 });
    expect(() => planOf(bit, rabbet(12))).toThrow(/widthMm/);
  });
});

describe("a groove wider than the bit", () => {
  const groove = (widthMm: number, depthMm = 6) =>
    ({ kind: "groove", depthMm, widthMm, edges: EDGES }) as const;

  it.each([
    [19.05, 0],
    [25, 1],
    [40, 2],
  ])("%f mm wide: moved over %i times for each pass", (widthMm, moves) => {
    for (const mounting of ["table", "handheld"] as const) {
      const plan = planOf(STRAIGHT, groove(widthMm), mounting);
      for (const { pass } of plan.passes) {
        const overs = plan.steps.flatMap((step) =>
          step.code === "move-over" && step.pass === pass.number && step.overMm > 0 ? [step.overMm] : [],
        );
        expect(overs).toHaveLength(moves);
        if (moves > 0) expect(overs.at(-1)).toBeCloseTo(widthMm - 19.05, 9);
      }
    }
  });

  it("is never widened into what was cut: each wall against the rotation, from one fixed side", () => {
    const of = (mounting: "table" | "handheld") =>
      planOf(STRAIGHT, groove(25), mounting)
        .steps.map((step) => describeStep(step, showIn("metric")))
        .join(" ");
    // On a table the new wood is on the operator's side of the bit: right to left. By hand it is on the left of the travel.
    expect(of("table")).toMatch(/5\.95 mm farther from you .* widens the groove toward you\./);
    expect(of("table")).toMatch(/the work from right to left/);
    expect(of("handheld")).toMatch(/5\.95 mm to the left of where it lay for the first run/);
  });

  it("is drawn as wide as it will be", () => {
    const input = inputOf(STRAIGHT, groove(25));
    const points = planProfiles(input, planOf(STRAIGHT, groove(25)))
      .at(-1)
      ?.flatMap(({ boundary }) => boundary);
    expect(points?.some(({ xMm }) => Math.abs(xMm - 12.5) < 1e-9)).toBe(true);
  });

  it("cannot be narrower than the bit, nor widened with a bit that has no flat bottom", () => {
    expect(() => planOf(STRAIGHT, groove(12))).toThrow(/widthMm/);
    const coreBox = bitOf({ kind: "core-box", diameterMm: 19.05, cuttingLengthMm: 15 });
    expect(() => planOf(coreBox, groove(25, 5))).toThrow(/widthMm/);
  });
});
