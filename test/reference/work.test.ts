import { type Cut, DomainError } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { codesOf, EDGES, planOf, precautionsOf, ROUND_OVER, STRAIGHT, spoken } from "./set-up-plans.ts";

const end = (lengthMm: number) => [{ lengthMm, grain: "end" as const }];
const across = (lengthMm: number) => [{ lengthMm, grain: "across" as const }];

function faultsOf(cut: Cut): readonly { pointer: string; code: string }[] {
  try {
    planOf(STRAIGHT, cut);
    return [];
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return error.faults.map(({ pointer, code }) => ({ pointer, code }));
  }
}

// Common practice, unless a line says otherwise.
describe("the piece of wood", () => {
  it("gives the cut its thickness when the cut has none", () => {
    const cut: Cut = { kind: "edge", edges: EDGES, work: { thicknessMm: 7 } };
    // A 6.35 mm round-over in 7 mm leaves the bearing 0.65 mm.
    expect(codesOf(planOf(ROUND_OVER(6.35), cut))).toContain("bearing-without-wood");
    expect(planOf(ROUND_OVER(6.35), cut).assumptions.map(({ code }) => code)).not.toContain(
      "thickness-assumed",
    );
    expect(planOf(ROUND_OVER(6.35), { ...cut, work: { thicknessMm: 19 } }).verdict).toBe("run");
  });

  it.each<[string, Cut, string, string]>([
    [
      "has one thickness",
      { kind: "edge", thicknessMm: 19, edges: EDGES, work: { thicknessMm: 18 } },
      "/cut/work/thicknessMm",
      "thicknesses-disagree",
    ],
    [
      "is thicker than a groove is deep",
      { kind: "groove", depthMm: 6, edges: EDGES, work: { thicknessMm: 6 } },
      "/cut/depthMm",
      "out-of-range",
    ],
    [
      "is as long as an edge along it",
      { kind: "groove", depthMm: 6, edges: EDGES, work: { lengthMm: 590 } },
      "/cut/edges/0/lengthMm",
      "longer-than-work",
    ],
    [
      "is as wide as a dado across it",
      { kind: "groove", depthMm: 6, edges: across(300), work: { widthMm: 280, lengthMm: 900 } },
      "/cut/edges/0/lengthMm",
      "longer-than-work",
    ],
    [
      "is at least 3 mm thick",
      { kind: "edge", edges: EDGES, work: { thicknessMm: 2 } },
      "/cut/work/thicknessMm",
      "out-of-range",
    ],
    [
      "is at least one piece",
      { kind: "edge", edges: EDGES, work: { count: 0 } },
      "/cut/work/count",
      "out-of-range",
    ],
    [
      "that a named bushing guides on needs the bushing's size",
      { kind: "groove", depthMm: 6, edges: EDGES, guide: "template-and-bushing" },
      "/cut/bushingDiameterMm",
      "bushing-not-given",
    ],
    [
      "that a bushing guides on has no other guide",
      { kind: "groove", depthMm: 6, edges: EDGES, guide: "straightedge", bushingDiameterMm: 30 },
      "/cut/guide",
      "unknown-choice",
    ],
  ])("%s", (_, cut, pointer, code) => {
    expect(faultsOf(cut)).toEqual([{ pointer, code }]);
  });

  it("is taken to be no longer than what is cut when nobody describes it, and that is said", () => {
    const described: Cut = { kind: "groove", depthMm: 6, edges: EDGES, work: { lengthMm: 900 } };
    const { work: _, ...open } = described;
    const codes = (cut: Cut) => planOf(STRAIGHT, cut).assumptions.map(({ code }) => code);
    expect(codes(open)).toContain("work-not-described");
    expect(codes(described)).not.toContain("work-not-described");
  });

  it("is small when the piece is, not when the cut is", () => {
    const short: Cut = {
      kind: "groove",
      depthMm: 6,
      isStopped: true,
      edges: [{ lengthMm: 200, grain: "long" }],
    };
    expect(precautionsOf(STRAIGHT, short)).toContain("small-work");
    expect(precautionsOf(STRAIGHT, { ...short, work: { lengthMm: 900 } })).not.toContain("small-work");
    // A long narrow rail runs only its width along the fence when its end is cut.
    const dado: Cut = {
      kind: "groove",
      depthMm: 6,
      edges: across(200),
      work: { lengthMm: 900, widthMm: 200 },
    };
    expect(precautionsOf(STRAIGHT, dado)).toContain("small-work");
    // By hand it is clamped by its length.
    expect(precautionsOf(STRAIGHT, dado, "handheld")).not.toContain("small-work");
  });

  it("goes on a sled when so little of it runs along the fence that it would pivot", () => {
    const rail: Cut = {
      kind: "rabbet",
      depthMm: 6,
      widthMm: 8,
      edges: end(60),
      work: { lengthMm: 400, widthMm: 60 },
    };
    const plan = planOf(STRAIGHT, rail);
    expect(plan.guide).toBe("sled");
    expect(precautionsOf(STRAIGHT, rail)).toContain("work-clamped-on-sled");
    expect(precautionsOf(STRAIGHT, rail)).not.toContain("small-work");
    expect(planOf(STRAIGHT, { ...rail, edges: end(400), work: { widthMm: 400 } }).guide).toBe("fence");
  });

  it("cannot run along a fence whose opening is as wide as it is", () => {
    const tiny: Cut = { kind: "rabbet", depthMm: 3, widthMm: 3, edges: end(20), guide: "fence" };
    expect(codesOf(planOf(STRAIGHT, tiny))).toContain("guide-does-not-serve");
  });

  it("is narrow: cut on a wide board and ripped after, held by feather boards", () => {
    const narrow: Cut = { kind: "edge", edges: EDGES, work: { lengthMm: 600, widthMm: 40 } };
    expect(precautionsOf(ROUND_OVER(6.35), narrow)).toEqual(
      expect.arrayContaining(["narrow-stock", "feather-boards"]),
    );
    const wide: Cut = { ...narrow, work: { lengthMm: 600, widthMm: 300 } };
    for (const code of ["narrow-stock", "feather-boards"]) {
      expect(precautionsOf(ROUND_OVER(6.35), wide)).not.toContain(code);
    }
  });

  it("has one face that stays down, and all alike pieces are cut at each setting", () => {
    const four: Cut = { kind: "edge", edges: EDGES, work: { count: 4, faceDown: "best" } };
    expect(spoken(ROUND_OVER(6.35), four)).toMatch(/Keep the best face of every piece down throughout/);
    expect(spoken(ROUND_OVER(6.35), four)).toMatch(/cut edge 1 \(long grain\) of all 4 pieces/);
    expect(precautionsOf(ROUND_OVER(6.35), { kind: "edge", edges: EDGES })).not.toContain("same-face-down");
  });

  it("crossed in its face is no end grain: knifed or taped where the bit leaves, and cut before what runs along it", () => {
    const dado: Cut = { kind: "groove", depthMm: 6, edges: [...EDGES, ...across(300), ...end(300)] };
    const order = planOf(STRAIGHT, dado).steps.flatMap((step) =>
      step.code === "cut-edges" ? [step.grain] : [],
    );
    expect(order.slice(0, 3)).toEqual(["end", "across", "long"]);
    const shelf = spoken(STRAIGHT, { kind: "groove", depthMm: 6, edges: across(300) });
    expect(shelf).toMatch(/\(across the grain\)/);
    expect(shelf).toMatch(/Knife or tape the line/);
    expect(shelf).not.toMatch(/end grain/i);
  });
});
