import type { Bit, Cut, GuideName, Mounting } from "@rimwise/domain";
import { describeAssumption, describeFinding, showIn } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, codesOf, EDGES, planOf, ROUND_OVER, STRAIGHT, said } from "./set-up-plans.ts";

const GROOVE: Cut = { kind: "groove", depthMm: 6, edges: EDGES };
const RABBET: Cut = { kind: "rabbet", depthMm: 6, widthMm: 8, edges: EDGES };
const PROFILE: Cut = { kind: "edge", edges: EDGES };
const CURVE: Cut = { kind: "edge", isCurved: true, edges: EDGES };
const OPENING: Cut = { kind: "edge", side: "inside", edges: EDGES };
const BUSHED: Cut = { ...GROOVE, bushingDiameterMm: 30, templateThicknessMm: 12 };
const NARROW = bitOf({ kind: "straight", diameterMm: 9.525, cuttingLengthMm: 25.4 });
const SURFACER = bitOf({ kind: "surfacing", diameterMm: 50.8, cuttingLengthMm: 12.7 });
const SURFACE: Cut = { kind: "surface", depthMm: 1, widthMm: 200, edges: EDGES };
const SMALL_ROUND_OVER = ROUND_OVER(6.35);
const FLUSH = bitOf({ kind: "flush-trim", diameterMm: 12.7, cuttingLengthMm: 25.4, bearing: "tip" });
const TRIM: Cut = { kind: "trim", overhangMm: 1, thicknessMm: 19, templateThicknessMm: 6, edges: EDGES };

/** What is said of the first cut, and of the guide itself, with the guide named. */
function spoken(bit: Bit, cut: Cut, mounting: Mounting, guide: GuideName): string {
  return said(planOf(bit, { ...cut, guide }, mounting)).join("\n");
}

// Which way to feed, worked out from which side of the bit touches wood: geometry. Guides and their sides: common practice.
describe("a guide that is named is used, with its direction", () => {
  it.each<[GuideName, Bit, Cut, Mounting, RegExp]>([
    ["fence", STRAIGHT, RABBET, "table", /moving the work from right to left/],
    ["fence", STRAIGHT, GROOVE, "table", /moving the work from right to left/],
    ["fence-flush-with-bearing", SMALL_ROUND_OVER, PROFILE, "table", /moving the work from right to left/],
    [
      "bearing-and-pin",
      SMALL_ROUND_OVER,
      CURVE,
      "table",
      /moving the work from right to left past the near side of the bit/,
    ],
    [
      "bearing-and-pin",
      SMALL_ROUND_OVER,
      OPENING,
      "table",
      /moving the opening's far wall past the bit from left to right, its near wall from right to left/,
    ],
    ["bearing", SMALL_ROUND_OVER, PROFILE, "handheld", /moving the router from left to right as you face/],
    [
      "bearing",
      SMALL_ROUND_OVER,
      CURVE,
      "handheld",
      /moving the router counter-clockwise around the outside/,
    ],
    ["bearing", SMALL_ROUND_OVER, OPENING, "handheld", /moving the router clockwise around the inside/],
    [
      "straightedge",
      NARROW,
      GROOVE,
      "handheld",
      /from left to right with the straightedge beyond it, on the left of its way/,
    ],
    [
      "edge-guide",
      NARROW,
      GROOVE,
      "handheld",
      /from left to right with the guided edge on your side, on the right of its way/,
    ],
    ["edge-guide", NARROW, { ...RABBET, widthMm: 4 }, "handheld", /from left to right as you face the edge/],
    [
      "straightedge",
      NARROW,
      { ...RABBET, widthMm: 4 },
      "handheld",
      /from left to right as you face the edge/,
    ],
    [
      "template-and-bushing",
      NARROW,
      BUSHED,
      "handheld",
      /template on the left of its way: clockwise in an opening, counter-clockwise around a piece/,
    ],
    ["template", FLUSH, TRIM, "table", /moving the work from right to left/],
    [
      "template",
      FLUSH,
      { ...TRIM, side: "inside" },
      "handheld",
      /moving the router clockwise around the inside/,
    ],
    ["sled", STRAIGHT, RABBET, "table", /moving the work from right to left/],
    ["rails", SURFACER, SURFACE, "handheld", /from left to right in every row.*carrying it back clear/],
  ])("%s", (guide, bit, cut, mounting, direction) => {
    const plan = planOf(bit, { ...cut, guide }, mounting);
    expect(plan.guide).toBe(guide);
    expect(plan.verdict, JSON.stringify(plan.findings)).not.toBe("do-not-run");
    expect(spoken(bit, cut, mounting, guide)).toMatch(direction);
    expect(plan.assumptions.map(({ code }) => code)).not.toContain("guide-assumed");
  });

  it("is taken from those that serve when nobody names it, and the assumptions say which", () => {
    const plan = planOf(NARROW, GROOVE, "handheld");
    const assumed = plan.assumptions.filter(({ code }) => code === "guide-assumed");
    expect(assumed).toEqual([{ code: "guide-assumed", guide: "straightedge" }]);
    expect(assumed.map((each) => describeAssumption(each, showIn("metric"))).join()).toMatch(
      /along a straightedge clamped to the work/,
    );
  });
});

describe("a guide that is named and does not serve stops the plan, and it says which would", () => {
  it.each<[GuideName, Bit, Cut, Mounting, readonly GuideName[]]>([
    ["fence", SMALL_ROUND_OVER, CURVE, "table", ["bearing-and-pin"]],
    ["bearing", STRAIGHT, RABBET, "table", ["sled", "fence"]],
    ["fence", STRAIGHT, GROOVE, "handheld", ["straightedge", "edge-guide"]],
    ["edge-guide", STRAIGHT, PROFILE, "handheld", ["straightedge"]],
    ["freehand", STRAIGHT, GROOVE, "handheld", ["straightedge", "edge-guide"]],
  ])("%s", (guide, bit, cut, mounting, would) => {
    const plan = planOf(bit, { ...cut, guide }, mounting);
    expect(plan).toMatchObject({ verdict: "do-not-run", guide: undefined, passes: [], steps: [] });
    const finding = plan.findings.find(({ code }) => code === "guide-does-not-serve");
    expect(finding).toMatchObject({ guide, offers: would.map((name) => ({ mounting, guide: name })) });
  });

  it("says that a surface is planed by hand on rails, not on a table", () => {
    const plan = planOf(SURFACER, SURFACE, "table");
    expect(plan.verdict).toBe("do-not-run");
    const [finding] = plan.findings.filter(({ code }) => code === "nothing-guides");
    expect(finding && describeFinding(finding, showIn("metric"))).toBe(
      "Nothing guides this cut. With the router held by hand this would: rails.",
    );
  });

  it("never takes the hands alone", () => {
    const plan = planOf(STRAIGHT, { ...GROOVE, guide: "freehand" }, "handheld");
    const [finding] = plan.findings.filter(({ code }) => code === "guide-does-not-serve");
    expect(finding && describeFinding(finding, showIn("metric"))).toMatch(/^No cut is planned freehand/);
  });
});

// Height: stock and 2 mm; the outfeed half level with the bit, the infeed half behind it by the cut. Common practice.
describe("a cut that takes the whole edge away", () => {
  it("runs along a fence with its outfeed half offset, the bit 2 mm past the stock", () => {
    const plan = planOf(STRAIGHT, { kind: "edge", thicknessMm: 19, edges: EDGES });
    expect(plan.guide).toBe("fence-with-offset-outfeed");
    expect(plan.steps.filter(({ code }) => code === "set-height")).toMatchObject([{ heightMm: 21 }]);
    const halves = plan.steps.flatMap((step) => (step.code === "set-fence-halves" ? [step] : []));
    const offMm = halves.map(({ infeedMm, outfeedMm }) => outfeedMm - infeedMm);
    expect(halves.every(({ outfeedMm }) => outfeedMm === 19.05 / 2)).toBe(true);
    expect(offMm.reduce((sum, each) => sum + each, 0)).toBeCloseTo(0.8, 9);
  });

  it("sets the halves apart by one bite in every pass, since each starts from the edge the last one left", () => {
    const plan = planOf(STRAIGHT, { kind: "edge", thicknessMm: 19, fenceMm: 19.05 / 2 - 3, edges: EDGES });
    expect(plan.passes.length).toBeGreaterThan(1);
    const halves = plan.steps.flatMap((step) => (step.code === "set-fence-halves" ? [step] : []));
    expect(plan.passes.map(({ pass }) => pass.fenceMm)).toEqual(halves.map(({ infeedMm }) => infeedMm));
    const bites = plan.passes.map(({ pass }) => pass.geometry.biteMm);
    expect(halves.map(({ infeedMm, outfeedMm }) => outfeedMm - infeedMm)).toEqual(
      bites.map((bite) => expect.closeTo(bite, 9)),
    );
    expect(bites.reduce((sum, each) => sum + each, 0)).toBeCloseTo(3, 9);
  });

  it("has no edge left for an edge guide by hand, and takes a straightedge on the work", () => {
    expect(planOf(STRAIGHT, { kind: "edge", thicknessMm: 19, edges: EDGES }, "handheld").guide).toBe(
      "straightedge",
    );
  });

  it("is not what a bit shorter than the stock does", () => {
    const short = bitOf({ kind: "straight", diameterMm: 19.05, cuttingLengthMm: 12.7 });
    expect(planOf(short, { kind: "edge", thicknessMm: 19, edges: EDGES }).guide).toBe("fence");
  });
});

// Offset (B − D)/2, and the bit reaches through the template: geometry.
describe("a bushing along a template", () => {
  it("lies half of bushing less bit off the line, and the bit reaches through the template", () => {
    const plan = planOf(NARROW, { ...GROOVE, bushingDiameterMm: 16, templateThicknessMm: 12 }, "handheld");
    expect(plan.guide).toBe("template-and-bushing");
    const fixed = plan.steps.find(({ code }) => code === "fix-bushing-template");
    expect(fixed).toMatchObject({ offsetMm: (16 - 9.525) / 2, templateThicknessMm: 12 });
    expect(plan.steps.filter(({ code }) => code === "set-height").at(-1)).toMatchObject({ heightMm: 18 });
    expect(plan.passes.at(-1)?.pass.heightMm).toBe(18);
  });

  it("assumes a template of 6 mm and says so", () => {
    const plan = planOf(NARROW, { ...GROOVE, bushingDiameterMm: 16 }, "handheld");
    expect(plan.assumptions).toContainEqual({ code: "template-assumed", thicknessMm: 6 });
    expect(plan.passes.at(-1)?.pass.heightMm).toBe(12);
  });

  it.each([9, 9.525, 11])("of %f mm is too small for a bit of 9.525 mm", (bushingDiameterMm) => {
    const plan = planOf(NARROW, { ...GROOVE, bushingDiameterMm }, "handheld");
    expect(codesOf(plan)).toContain("bushing-too-small");
    expect(plan.verdict).toBe("do-not-run");
  });

  it("is for the hand-held router only", () => {
    const plan = planOf(NARROW, { ...GROOVE, bushingDiameterMm: 16 }, "table");
    expect(plan.findings.find(({ code }) => code === "guide-does-not-serve")).toMatchObject({
      offers: [
        { mounting: "table", guide: "sled" },
        { mounting: "table", guide: "fence" },
      ],
    });
  });
});
