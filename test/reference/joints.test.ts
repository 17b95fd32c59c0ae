import {
  type Bit,
  formOutline,
  JOINTS,
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
import { bitWith, COPE, DOVETAIL, FRESH, GROOVE, STICK, TONGUE } from "./joint-pairs.ts";
import { area, cuttingPolygons, differenceArea, rectangle } from "./polygons.ts";

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

  it.each(FRESH)("%s is cut at settings that a plan takes", (_, kind, bits, asked) => {
    const { first, second } = solveJoint(kind, bits, asked);
    for (const { cut, setting } of [first, second]) {
      if ("heightMm" in cut) expect(cut).toMatchObject({ heightMm: setting.heightMm });
      expect(setting.fenceMm).toBeGreaterThanOrEqual(0);
      expect(setting.heightMm).toBeGreaterThan(0);
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
