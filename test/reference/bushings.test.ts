import { type Cut, describePrecaution, describeStep, type Plan, planProfiles, showIn } from "@rimwise/domain";
import { describe, expect, test } from "vitest";
import { bitOf, codesOf, EDGES, inputOf, planOf, said } from "./set-up-plans.ts";

const IN = 25.4;
/** The usual set for inlays: a 1/8 in bit, a 5/16 in bushing and a sleeve of 9/16 in over it (common practice). */
const EIGHTH = bitOf({ kind: "spiral-down-cut", diameterMm: IN / 8, cuttingLengthMm: 12.7 });
const PLUG: Cut = { kind: "inlay", part: "plug", depthMm: 4, bushingDiameterMm: (5 / 16) * IN, edges: EDGES };
const RECESS: Cut = { ...PLUG, part: "recess", depthMm: 3, bushingDiameterMm: (9 / 16) * IN };

function bushingStep({ steps }: Plan) {
  for (const step of steps) if (step.code === "fix-bushing-template") return step;
  throw new Error("no bushing");
}

// Geometry: a bushing of B around a bit of D holds the bit's axis B/2 from the template, so that its walls lie (B - D)/2 and (B + D)/2
// from it. Recess and plug are equal if B of the recess is B of the plug and two bit diameters more.
describe("an inlay along one template", () => {
  test("has a recess and a plug that lie equally far from the template's line", () => {
    const recess = bushingStep(planOf(EIGHTH, RECESS, "handheld"));
    const plug = bushingStep(planOf(EIGHTH, PLUG, "handheld"));
    expect(recess.offsetMm).toBeCloseTo((7 / 32) * IN, 9);
    expect(plug.offsetMm).toBeCloseTo(recess.offsetMm, 9);
  });

  test("names the bushing of the other part, and the least radius of a corner that both fit", () => {
    const recess = bushingStep(planOf(EIGHTH, RECESS, "handheld"));
    const plug = bushingStep(planOf(EIGHTH, PLUG, "handheld"));
    expect(recess.otherBushingDiameterMm).toBeCloseTo((5 / 16) * IN, 9);
    expect(plug.otherBushingDiameterMm).toBeCloseTo((9 / 16) * IN, 9);
    expect(recess.leastCornerRadiusMm).toBeCloseTo((9 / 32) * IN, 9);
    expect(plug.leastCornerRadiusMm).toBeCloseTo((9 / 32) * IN, 9);
    const said = describeStep(recess, showIn("imperial"));
    expect(said).toContain("Its opening is larger than the recess by 7/32 in all round");
    expect(said).toContain("The plug takes the same template and bit with a bushing of 5/16 in");
  });

  test("says when the bit does not turn free in the plug's bushing", () => {
    const narrow = bushingStep(planOf(EIGHTH, { ...RECESS, bushingDiameterMm: 10 }, "handheld"));
    expect(narrow.otherBushingDiameterMm).toBeUndefined();
    expect(describeStep(narrow, showIn("metric"))).toContain(
      "The plug cannot be cut on the same template with this bit",
    );
  });

  // Common practice: clockwise around the inside of a template's opening, by hand; only a bit that cuts at its end is plunged.
  test.each([RECESS, PLUG])(
    "runs clockwise inside the opening and is plunged only with a bit that plunges: %o",
    (cut) => {
      const plunging = planOf({ ...EIGHTH, isEndCutting: true }, cut, "handheld");
      expect(plunging.verdict).not.toBe("do-not-run");
      expect(said(plunging).join(" ")).toMatch(/router clockwise around the inside/);
      expect(said(plunging).join(" ")).toMatch(/plunge there, and raise the bit before you lift/);
      const unknown = planOf(EIGHTH, cut, "handheld");
      expect(said(unknown).join(" ")).toContain("Never plunge this bit");
      expect(unknown.assumptions.map(({ code }) => code)).toContain("end-cutting-unknown");
    },
  );

  test("reaches through the template, and is for the handheld router alone", () => {
    expect(planOf(EIGHTH, RECESS, "handheld").passes.at(-1)?.pass.heightMm).toBeCloseTo(3 + 6, 9);
    expect(codesOf(planOf(EIGHTH, RECESS, "table"))).toContain("guide-does-not-serve");
  });

  test("needs a bit with straight walls that has no bearing", () => {
    const core = bitOf({ kind: "core-box", diameterMm: 12.7, cuttingLengthMm: 12.7 });
    expect(() => planOf(core, RECESS, "handheld")).toThrow(/cut-does-not-suit-bit/);
  });
});

describe("an edge along a template", () => {
  const bit = bitOf({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 31.75 });
  const edge: Cut = { kind: "edge", thicknessMm: 19, bushingDiameterMm: 19.05, isCurved: true, edges: EDGES };

  // Geometry: half of bushing less bit. Outside, the template is the smaller; inside, its opening is the larger.
  test.each([
    [
      "outside",
      /smaller than the finished piece by 3\.18 mm all round/,
      /counter-clockwise around the outside/,
    ],
    [
      "inside",
      /opening is larger than the finished one by 3\.18 mm all round/,
      /clockwise around the inside/,
    ],
  ] as const)("%s says on which side of the line the template lies", (side, place, direction) => {
    const plan = planOf(bit, { ...edge, side }, "handheld");
    expect(plan.guide).toBe("template-and-bushing");
    expect(bushingStep(plan).offsetMm).toBeCloseTo((19.05 - 12.7) / 2, 9);
    expect(said(plan).join(" ")).toMatch(place);
    expect(said(plan).join(" ")).toMatch(direction);
  });

  // Common practice: the waste is sawn to within 2 to 3 mm, and each pass goes deeper; the bit comes out below.
  test("is walked up to by height through the template, and past the work", () => {
    const plan = planOf(bit, edge, "handheld");
    expect(plan.passes.at(-1)?.pass.heightMm).toBeCloseTo(19 + 2 + 6, 9);
    expect(plan.assumptions).toContainEqual({ code: "overhang-assumed", overhangMm: expect.closeTo(3, 9) });
    expect(plan.steps.map(({ code }) => code)).not.toContain("set-fence");
    // What comes out below has the work's own depth.
    expect(plan.testPiece).toBeUndefined();
    for (const { pass } of plan.passes) expect(pass.geometry.removedAreaMm2).toBeGreaterThan(0);
    expect(planProfiles(inputOf(bit, edge, "handheld"), plan)).toHaveLength(plan.passes.length);
  });

  test("takes a profile without a bearing, and none with one", () => {
    const plan = planOf(
      bitOf({ kind: "core-box", diameterMm: 12.7, cuttingLengthMm: 12.7 }),
      { ...edge, fenceMm: 0, heightMm: 6 },
      "handheld",
    );
    expect(plan.guide).toBe("template-and-bushing");
    const roundOver = bitOf({ kind: "round-over", diameterMm: 25.4, radiusMm: 6.35 });
    expect(codesOf(planOf(roundOver, { ...edge, bushingDiameterMm: 40 }, "handheld"))).toContain(
      "guide-does-not-serve",
    );
  });

  test("keeps the template fixed and clear of the bit", () => {
    const { precautions } = planOf(bit, edge, "handheld");
    const sentences = precautions.map((each) => describePrecaution(each, showIn("metric"))).join(" ");
    expect(sentences).toContain("Fix the template so that it cannot creep");
  });
});
