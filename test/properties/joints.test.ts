import {
  type Bit,
  closeJoint,
  formOutline,
  type JointClosure,
  type JointHalf,
  profileAfter,
  type SolvedJoint,
  solveJoint,
} from "@rimwise/domain";
import fc from "fast-check";
import polygonClipping, { type MultiPolygon } from "polygon-clipping";
import { describe, expect, it } from "vitest";
import {
  bitWith,
  COPE,
  DOVETAIL,
  FINGER_JOINT,
  GROOVE,
  LOCK_MITRE,
  off,
  STICK,
  TONGUE,
} from "../reference/joint-pairs.ts";
import { area } from "../reference/polygons.ts";

const RUNS = { numRuns: 60 };
const DEPTH_MM = 30;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** A cope and stick, or a tongue and groove, of which each bit was ground by itself. */
const groundPairs = fc
  .tuple(between(-0.3, 0.3), between(-0.4, 0.4), between(-0.4, 0.4), fc.boolean())
  .map(([widthMm, depthMm, landMm, isDoor]) => {
    const sizes = { grooveWidthMm: 6.35 + widthMm, grooveDepthMm: 9.53 + depthMm };
    return isDoor
      ? ({
          kind: "cope-and-stick",
          joint: solveJoint("cope-and-stick", [bitWith(STICK, { ...sizes, landMm: 2 + landMm }), COPE], {
            thicknessMm: 19,
          }),
        } as const)
      : ({
          kind: "tongue-and-groove",
          joint: solveJoint("tongue-and-groove", [bitWith(GROOVE, sizes), TONGUE], { thicknessMm: 19 }),
        } as const);
  });

function polygonOf({ bit, setting }: JointHalf): MultiPolygon {
  return profileAfter(formOutline(bit.form), setting, {
    sides: 1,
    depthMm: DEPTH_MM,
    toleranceMm: 0.0005,
  }).map(({ boundary }) => [boundary.map(({ xMm, zMm }): [number, number] => [xMm, zMm])]);
}

/** The halves of a joint whose faces are the same way down, and the strip of heights that both have. */
function laid({ first, second, closure }: SolvedJoint) {
  const { reachMm, facesOffMm } = closure;
  const other = polygonOf(second).map((rings) =>
    rings.map((ring) => ring.map(([x, z]): [number, number] => [reachMm - x, z + facesOffMm])),
  );
  const { thicknessMm } = first.setting;
  const [low, high] = [Math.max(0, facesOffMm), Math.min(thicknessMm, thicknessMm + facesOffMm)];
  const shared: MultiPolygon = [
    [
      [
        [reachMm - DEPTH_MM, low],
        [DEPTH_MM, low],
        [DEPTH_MM, high],
        [reachMm - DEPTH_MM, high],
      ],
    ],
  ];
  return { one: polygonOf(first), other, shared };
}

/** A disc of wood around a place, with many sides. */
function disc(x: number, z: number, radius: number): MultiPolygon {
  const turn = (index: number) => (2 * Math.PI * index) / 48;
  return [
    [
      Array.from({ length: 48 }, (_, index): [number, number] => [
        x + radius * Math.cos(turn(index)),
        z + radius * Math.sin(turn(index)),
      ]),
    ],
  ];
}

function expectAlike(one: JointClosure, other: JointClosure): void {
  expect(one.reachMm).toBeCloseTo(other.reachMm, 6);
  expect(one.facesOffMm).toBeCloseTo(other.facesOffMm, 9);
  expect(one.gap.mm).toBeCloseTo(other.gap.mm, 3);
  expect(one.overlap.mm).toBeCloseTo(other.overlap.mm, 3);
}

describe("two halves laid on each other", () => {
  it("have the gap and overlap that polygon-clipping finds", () => {
    fc.assert(
      fc.property(groundPairs, ({ joint }) => {
        const { gap, overlap } = joint.closure;
        const { one, other, shared } = laid(joint);
        const pressed = area(polygonClipping.intersection(one, other, shared));
        const open = area(polygonClipping.difference(shared, one, other));
        // Along walls of some 40 mm.
        expect(pressed).toBeLessThanOrEqual(40 * overlap.mm + 0.05);
        expect(open).toBeLessThanOrEqual(40 * gap.mm + 0.05);
        if (overlap.mm > 0.02) {
          expect(pressed).toBeGreaterThan(0.001);
          // Around the deepest place there is nothing but both halves' wood, to nearly that depth.
          const around = disc(overlap.xMm, overlap.zMm, overlap.mm * 0.98);
          const half = area(polygonClipping.intersection(around, shared, one));
          const otherHalf = area(polygonClipping.intersection(around, shared, other));
          const whole = area(polygonClipping.intersection(around, shared));
          expect(Math.max(half, otherHalf)).toBeGreaterThan(0.99 * whole);
        }
        if (gap.mm > 0.02) {
          // Around the widest place there is none of one half, to nearly that distance.
          const around = disc(gap.xMm, gap.zMm, gap.mm * 0.98);
          const least = Math.min(
            area(polygonClipping.intersection(around, shared, one)),
            area(polygonClipping.intersection(around, shared, other)),
          );
          expect(least).toBeLessThan(0.01 * area(around));
        }
      }),
      RUNS,
    );
  });

  it("are the same joint when both bits stand as much higher in thicker stock", () => {
    fc.assert(
      fc.property(groundPairs, between(0, 3), ({ kind, joint: { first, second, closure } }, byMm) => {
        // The round of a door's profile ends at its face, and would then have a step there.
        fc.pre(kind === "tongue-and-groove");
        const higher = closeJoint(kind, off(first, byMm), off(second, byMm));
        expectAlike(higher, closure);
      }),
      RUNS,
    );
  });

  it("are alike whichever of them is taken first, if one bit cuts both", () => {
    const bits: readonly (readonly ["lock-mitre" | "finger-joint", Bit])[] = [
      ["lock-mitre", LOCK_MITRE],
      ["finger-joint", FINGER_JOINT],
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...bits),
        between(-0.4, 0.4),
        between(0, 0.4),
        ([kind, bit], upMm, outMm) => {
          const { first, second } = solveJoint(kind, [bit, bit], { thicknessMm: 18 });
          const one = off(first, upMm, outMm);
          const there = closeJoint(kind, one, second);
          const back = closeJoint(kind, second, one);
          expectAlike(back, there);
        },
      ),
      RUNS,
    );
  });

  it("have a wider gap the more play a dovetail is given, and press the less", () => {
    const asked = { thicknessMm: 24, otherThicknessMm: 15, depthMm: 8 };
    const { first, second } = solveJoint("sliding-dovetail", [DOVETAIL, DOVETAIL], asked);
    fc.assert(
      fc.property(between(-0.5, 0.5), between(0, 0.3), (playMm, moreMm) => {
        const tight = closeJoint("sliding-dovetail", first, off(second, 0, -playMm / 2));
        const loose = closeJoint("sliding-dovetail", first, off(second, 0, -(playMm + moreMm) / 2));
        expect(loose.gap.mm).toBeGreaterThanOrEqual(tight.gap.mm - 0.001);
        expect(loose.overlap.mm).toBeLessThanOrEqual(tight.overlap.mm + 0.001);
      }),
      RUNS,
    );
  });
});
