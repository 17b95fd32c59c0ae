import type { Bit, Cut, Mounting } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, codesOf, EDGES, planOf, ROUND_OVER, STRAIGHT } from "./set-up-plans.ts";

// Which guide serves what, and which way to feed: common practice.
describe("what guides a cut", () => {
  it.each<[string, Bit, Cut, Mounting, string | undefined]>([
    [
      "a straight edge on a table",
      STRAIGHT,
      { kind: "rabbet", depthMm: 6, widthMm: 8, edges: EDGES },
      "table",
      "fence",
    ],
    [
      "one with a bearing",
      ROUND_OVER(6.35),
      { kind: "edge", edges: EDGES },
      "table",
      "fence-flush-with-bearing",
    ],
    [
      "a curved one with a bearing",
      ROUND_OVER(6.35),
      { kind: "edge", isCurved: true, edges: EDGES },
      "table",
      "bearing-and-pin",
    ],
    [
      "the same by hand",
      ROUND_OVER(6.35),
      { kind: "edge", isCurved: true, edges: EDGES },
      "handheld",
      "bearing",
    ],
    [
      "an opening with a bearing",
      ROUND_OVER(6.35),
      { kind: "edge", side: "inside", edges: EDGES },
      "handheld",
      "bearing",
    ],
    [
      "a straight edge by hand without one",
      STRAIGHT,
      { kind: "rabbet", depthMm: 6, widthMm: 8, edges: EDGES },
      "handheld",
      "edge-guide",
    ],
    ["a groove by hand", STRAIGHT, { kind: "groove", depthMm: 6, edges: EDGES }, "handheld", "straightedge"],
    ["a groove on a table", STRAIGHT, { kind: "groove", depthMm: 6, edges: EDGES }, "table", "fence"],
    [
      "a curved edge without a bearing",
      STRAIGHT,
      { kind: "rabbet", depthMm: 6, widthMm: 8, isCurved: true, edges: EDGES },
      "table",
      undefined,
    ],
    [
      "an opening without one",
      STRAIGHT,
      { kind: "rabbet", depthMm: 6, widthMm: 8, side: "inside", edges: EDGES },
      "handheld",
      undefined,
    ],
  ])("%s", (_, bit, cut, mounting, guide) => {
    const plan = planOf(bit, cut, mounting);
    expect(plan.guide).toBe(guide);
    if (guide !== undefined) return;
    expect(plan).toMatchObject({ verdict: "do-not-run", passes: [], steps: [] });
    expect(codesOf(plan)).toContain("nothing-guides");
  });
});

describe("a bearing needs wood to run on", () => {
  it.each<[number, number, boolean]>([
    [19, 19, false],
    [6.35, 6, false],
    [6.35, 8, false],
    [6.35, 8.4, true],
    [6.35, 19, true],
  ])("a round-over of %f mm in stock of %f mm: %s", (radiusMm, thicknessMm, isEnough) => {
    for (const mounting of ["table", "handheld"] as const) {
      const plan = planOf(ROUND_OVER(radiusMm), { kind: "edge", thicknessMm, edges: EDGES }, mounting);
      if (isEnough) expect(codesOf(plan)).not.toContain("bearing-without-wood");
      else {
        expect(codesOf(plan)).toContain("bearing-without-wood");
        expect(plan.verdict).toBe("do-not-run");
      }
    }
  });
});

// Height for the middle of the stock at the middle of the bit; the edge comes to a sharp corner: geometry, common practice.
describe("a joint that meets at the middle of the stock", () => {
  it.each<[string, Bit["form"], number, number, number | undefined]>([
    [
      "lock mitre, 19 mm",
      { kind: "lock-mitre", diameterMm: 70, cuttingLengthMm: 25, lockDepthMm: 2 },
      19,
      22,
      13,
    ],
    [
      "lock mitre, as thick as it joins",
      { kind: "lock-mitre", diameterMm: 70, cuttingLengthMm: 25, lockDepthMm: 2 },
      25,
      25,
      10,
    ],
    [
      "tongue, 18 mm",
      { kind: "tongue", diameterMm: 41, tongueThicknessMm: 6, tongueLengthMm: 9.5, cuttingLengthMm: 22 },
      18,
      20,
      11,
    ],
    [
      "drawer joint, 12 mm",
      { kind: "drawer-joint", diameterMm: 44, cuttingLengthMm: 16, stepMm: 6, stepHeightMm: 6 },
      12,
      14,
      16,
    ],
    [
      "finger joint, 20 mm",
      { kind: "finger-joint", diameterMm: 41, fingers: 3, fingerHeightMm: 5, fingerDepthMm: 10 },
      20,
      22.5,
      10.5,
    ],
  ])("%s: height and fence", (_, form, thicknessMm, heightMm, fenceMm) => {
    const [last] = planOf(bitOf(form), { kind: "joint", thicknessMm, edges: EDGES }).passes.slice(-1);
    expect(last?.pass.heightMm).toBeCloseTo(heightMm, 6);
    expect(last?.pass.fenceMm).toBeCloseTo(fenceMm ?? Number.NaN, 6);
  });

  it("is refused in stock thicker than the bit joins", () => {
    const form = { kind: "lock-mitre", diameterMm: 70, cuttingLengthMm: 25, lockDepthMm: 2 } as const;
    expect(() => planOf(bitOf(form), { kind: "joint", thicknessMm: 26, edges: EDGES })).toThrow(
      /thicknessMm/,
    );
  });
});
