import {
  type Bit,
  closeJoint,
  formOutline,
  JOINTS,
  type JointAsked,
  type JointHalf,
  type JointKind,
  jointDefinition,
  pairFindings,
  type SolvedJoint,
  sharpened,
  solveJoint,
} from "@rimwise/domain";
import polygonClipping, { type MultiPolygon } from "polygon-clipping";
import { describe, expect, it } from "vitest";
import { bitWith, COPE, DOVETAIL, FRESH, GROOVE, LOCK_MITRE, PANEL, STICK, TONGUE } from "./joint-pairs.ts";
import { area, cuttingPolygons, differenceArea, rectangle } from "./polygons.ts";
import { EDGES, planOf } from "./set-up-plans.ts";

// The halves are cut out and laid on each other here with polygon-clipping, from the outlines alone.

const DEPTH_MM = 40;

/** Wood that is left of a half, from its edge (or the middle of a groove) inward. */
function left({ bit, setting }: JointHalf, depthMm: number): MultiPolygon {
  const { heightMm, fenceMm, thicknessMm } = setting;
  const cuts = cuttingPolygons(formOutline(bit.form), heightMm, fenceMm, 200);
  return polygonClipping.difference(rectangle(0, depthMm, thicknessMm), ...cuts);
}

/** Both halves in the place in which they are joined. */
function laidTogether(kind: JointKind, { first, second, closure }: SolvedJoint) {
  const { isTurnedOver, closes } = jointDefinition(kind);
  const { thicknessMm } = second.setting;
  const { reachMm, facesOffMm } = closure;
  const other = left(second, closes === "slid" ? reachMm : DEPTH_MM).map((rings) =>
    rings.map((ring) =>
      ring.map(([x, z]): [number, number] => [
        reachMm - x,
        (isTurnedOver ? thicknessMm - z : z) + facesOffMm,
      ]),
    ),
  );
  const fromX = closes === "slid" ? 0 : reachMm - DEPTH_MM;
  return { one: left(first, DEPTH_MM), other, whole: rectangle(fromX, DEPTH_MM, first.setting.thicknessMm) };
}

describe("every joint of fresh bits", () => {
  it("is among those that are tried here", () => {
    const tried = new Set<string>(FRESH.map(([, kind]) => kind));
    expect(JOINTS.map(({ kind }) => kind).filter((kind) => !tried.has(kind))).toEqual(["panel-and-groove"]);
  });

  it.each(FRESH)("%s closes within 0.01 mm with flush faces", (_, kind, bits, asked) => {
    const joint = solveJoint(kind, bits, asked);
    const { gap, overlap, facesOffMm, endsOffMm = 0 } = joint.closure;
    expect(joint.findings).toEqual([]);
    for (const mm of [gap.mm, overlap.mm, facesOffMm, endsOffMm]) expect(Math.abs(mm)).toBeLessThan(0.01);
    const { one, other, whole } = laidTogether(kind, joint);
    // 0.01 mm along a wall of up to 100 mm.
    expect(differenceArea(polygonClipping.union(one, other), [whole])).toBeLessThan(1);
    expect(area(polygonClipping.intersection(one, other))).toBeLessThan(1);
  });

  it.each(FRESH)("%s is planned as it was solved", (_, kind, bits, asked) => {
    const { first, second } = solveJoint(kind, bits, asked);
    for (const { bit, cut, setting } of [first, second]) {
      const last = planOf(bit, { ...cut, edges: EDGES }).passes.at(-1)?.pass;
      expect(last?.heightMm).toBeCloseTo(setting.heightMm, 9);
      if (cut.kind !== "groove") expect(last?.fenceMm).toBeCloseTo(setting.fenceMm, 9);
    }
  });
});

describe("a pair sharpened apart, by hand", () => {
  const doors = (bits: readonly [Bit, Bit]) => solveJoint("cope-and-stick", bits, { thicknessMm: 19 });
  const ground = (bit: Bit) => sharpened(bit, { diameterMm: 41.1 });

  it("leaves the shoulders open by what the stick lost: the tongue meets the bottom of the groove first", () => {
    // 0.2 mm off the diameter on the same bearing: a groove 0.1 mm less deep.
    const { closure, findings } = doors([ground(STICK), COPE]);
    expect(closure.reachMm).toBeCloseTo(9.43, 6);
    expect(closure.gap.mm).toBeCloseTo(0.1, 3);
    expect(closure.overlap.mm).toBeLessThan(0.003);
    // The groove is 6.35 wide, its lower side above round and land: 6 + 2.
    expect(closure.meetsAt.fromMm).toBeCloseTo(8, 6);
    expect(closure.meetsAt.toMm).toBeCloseTo(14.35, 6);
    expect(findings).toMatchObject([{ code: "stays-open", gapMm: expect.closeTo(0.1, 3) }]);
  });

  it("leaves the bottom of the groove open by what the cope lost, with the shoulders closed", () => {
    const { closure } = doors([STICK, ground(COPE)]);
    expect(closure.reachMm).toBeCloseTo(9.43, 6);
    expect(closure.gap.mm).toBeCloseTo(0.1, 3);
    expect(closure.gap.xMm).toBeGreaterThan(9.4);
  });

  it("closes if both lost the same", () => {
    expect(doors([ground(STICK), ground(COPE)]).closure.gap.mm).toBeLessThan(0.003);
    expect(pairFindings(ground(STICK), ground(COPE))).toMatchObject([{ code: "pair-matches" }]);
  });

  it("presses a tongue that is 0.2 mm too thick by that at its back, and asks for 0.2 mm of shims", () => {
    const { closure, findings } = doors([bitWith(STICK, { grooveWidthMm: 6.15 }), COPE]);
    expect(closure.overlap.mm).toBeCloseTo(0.2, 3);
    expect(closure.reachMm).toBeCloseTo(9.53, 3);
    expect(findings).toMatchObject([
      { code: "goes-in-too-tight", byMm: expect.closeTo(0.2, 6), shimMm: expect.closeTo(0.2, 6) },
    ]);
  });

  it("leaves 0.2 mm behind a tongue that is so much too thin, with the profile closed", () => {
    const { closure, findings } = doors([bitWith(STICK, { grooveWidthMm: 6.55 }), COPE]);
    expect(closure.gap.mm).toBeCloseTo(0.2, 3);
    // The groove's far side: round and land, 8 mm, and the groove.
    expect(closure.gap.zMm).toBeGreaterThan(8 + 6.3);
    expect(closure.overlap.mm).toBeLessThan(0.003);
    expect(findings).toMatchObject([{ code: "goes-in-too-loose", byMm: expect.closeTo(0.2, 6) }]);
  });

  it("meets at the round's end first if the hollow's radius is 0.2 mm smaller", () => {
    // Over a drop u the round takes R - √(R² - u²), the hollow r - √(r² - u²) less than the whole depth: at u = r they meet with
    // √(R² - r²) - (R - r) to go.
    const apartMm = Math.sqrt(6 ** 2 - 5.8 ** 2) - 0.2;
    const { closure } = doors([STICK, bitWith(COPE, { radiusMm: 5.8 })]);
    expect(closure.reachMm).toBeCloseTo(9.53 - apartMm, 2);
    expect(closure.gap.mm).toBeCloseTo(apartMm, 2);
  });

  it("is a warning, whichever bit is named first, with what differs", () => {
    for (const bits of [
      [ground(STICK), COPE],
      [COPE, ground(STICK)],
    ] as const) {
      expect(pairFindings(...bits)).toMatchObject([
        { code: "sharpened-apart", gapMm: expect.closeTo(0.1, 3), differ: ["depth"] },
      ]);
    }
    const thinner = bitWith(GROOVE, { grooveWidthMm: 6.2 });
    expect(pairFindings(TONGUE, thinner)).toMatchObject([
      { code: "sharpened-apart", overlapMm: expect.closeTo(0.075, 3), differ: ["thickness"] },
    ]);
    expect(pairFindings(TONGUE, GROOVE)).toMatchObject([{ code: "pair-matches" }]);
    expect(pairFindings(TONGUE, COPE)).toEqual([{ code: "not-a-pair", severity: "note" }]);
    expect(pairFindings(DOVETAIL, bitWith(DOVETAIL, { angleDeg: 12 }))).toMatchObject([
      { code: "sharpened-apart", differ: ["angle"] },
    ]);
  });
});

describe("a raised panel in its frame", () => {
  it("has a tongue as thick as the groove takes with the play asked, where it is deepest in", () => {
    const asked = { thicknessMm: 19, otherThicknessMm: 16, clearanceMm: 0.3 };
    const { second, closure, findings } = solveJoint("panel-and-groove", [STICK, PANEL], asked);
    expect(findings).toEqual([]);
    expect(closure.overlap.mm).toBeLessThan(0.003);
    // The bearing of 4.76 mm (3/16 in, from memory), then a flat 10 mm wide, past the groove's 9.53: the tongue ends where the flat is.
    expect(second.setting.heightMm).toBeCloseTo(4.76 + 16 - (6.35 - 0.3), 6);
    expect(closure.reachMm).toBeCloseTo(9.53, 6);
    expect(second.measures.thicknessMm).toBeCloseTo(6.05, 6);
  });

  it("is pressed if its bevel is too thick at the groove's mouth", () => {
    // The bevel starts 5 mm in and rises 12 mm over 33.1: 9.53 mm in it is 1.64 mm up.
    const narrow = bitWith(PANEL, { tongueWidthMm: 5 });
    const asked = { thicknessMm: 19, otherThicknessMm: 16 };
    const { first, second } = solveJoint("panel-and-groove", [STICK, narrow], asked);
    const thick = { ...second, setting: { ...second.setting, heightMm: second.setting.heightMm - 0.5 } };
    const rise = ((9.53 - 5) * 12) / (88.9 / 2 - 6.35 - 5);
    expect(second.setting.heightMm).toBeCloseTo(4.76 + rise + 16 - 6.35, 3);
    expect(closeJoint("panel-and-groove", first, thick).overlap.mm).toBeGreaterThan(0.1);
  });
});

describe("what no setting gives is refused, with what would do", () => {
  it.each<[string, JointKind, readonly [Bit, Bit], JointAsked, string]>([
    [
      "a bit of another form",
      "cope-and-stick",
      [COPE, COPE],
      { thicknessMm: 19 },
      "/0/form/kind: unknown-choice",
    ],
    [
      "no wood behind the groove",
      "cope-and-stick",
      [STICK, COPE],
      { thicknessMm: 14 },
      "/thicknessMm: out-of-range",
    ],
    [
      "stock over the mitre's length",
      "lock-mitre",
      [LOCK_MITRE, LOCK_MITRE],
      { thicknessMm: 23 },
      "/thicknessMm: setting-out-of-reach",
    ],
    [
      "a tail's board too thick for one run on each face",
      "sliding-dovetail",
      [DOVETAIL, DOVETAIL],
      { thicknessMm: 24, otherThicknessMm: 22, depthMm: 8 },
      "/otherThicknessMm: setting-out-of-reach",
    ],
  ])("%s", (_, kind, bits, asked, fault) => {
    expect(() => solveJoint(kind, bits, asked)).toThrow(fault);
  });

  it("but a rail thicker than the cope's cutter reaches is a finding", () => {
    // Groove, land and round 14.35 mm, the cutter at the tip 6.35 more.
    expect(solveJoint("cope-and-stick", [STICK, COPE], { thicknessMm: 22 }).findings).toMatchObject([
      { code: "back-not-reached", shortMm: expect.closeTo(22 - 20.7, 6) },
      { code: "stays-open" },
    ]);
  });
});
