import { type Form, formOutline, outlineLengthMm, type Profile, profileAfter } from "@rimwise/domain";
import polygonClipping, { type MultiPolygon, type Ring } from "polygon-clipping";
import { describe, expect, it } from "vitest";
import { area, differenceArea, rectangle } from "./polygons.ts";

// Common practice: the two halves of a joint, each cut by its own bit, close without a gap. Their cross-sections are laid
// against each other with polygon-clipping.

const DEPTH_MM = 40;

/** What is left of an edge, cut with all of the bit up to where its bearing or narrowest edge runs. */
function edgeLeft(form: Form, fenceMm: number, thicknessMm: number): MultiPolygon {
  const heightMm = outlineLengthMm(formOutline(form));
  return polygonsOf(
    profileAfter(formOutline(form), { heightMm, fenceMm, thicknessMm }, { sides: 1, depthMm: DEPTH_MM }),
  );
}

function polygonsOf(profile: Profile): MultiPolygon {
  return profile.map(({ boundary }) => [boundary.map(({ xMm, zMm }): [number, number] => [xMm, zMm])]);
}

function placed(polygons: MultiPolygon, place: (x: number, z: number) => [number, number]): MultiPolygon {
  return polygons.map((rings) => rings.map((ring): Ring => ring.map(([x, z]) => place(x, z))));
}

/** Both halves together fill the whole, and nothing of one is in the other. */
function expectClosed(one: MultiPolygon, other: MultiPolygon, whole: MultiPolygon, withinMm2: number) {
  expect(differenceArea(polygonClipping.union(one, other), whole)).toBeLessThan(withinMm2);
  expect(Math.abs(area(one) + area(other) - area(whole))).toBeLessThan(withinMm2);
}

describe("the halves of a joint close", () => {
  it("cope and stick: stub tongue in groove, hollow on rounding", () => {
    const pair = { diameterMm: 41.3, grooveWidthMm: 6.35, grooveDepthMm: 9.53, radiusMm: 6, landMm: 2 };
    const cope: Form = { kind: "cope", ...pair };
    const thicknessMm = outlineLengthMm(formOutline(cope));
    const bearingMm = 41.3 / 2 - 9.53;
    const stile = edgeLeft({ kind: "stick", ...pair }, bearingMm, thicknessMm);
    // The rail's tongue reaches the bottom of the groove.
    const rail = placed(edgeLeft(cope, bearingMm, thicknessMm), (x, z) => [9.53 - x, z]);
    // 9.4 mm of arc on either side, chords within 0.02 mm.
    expectClosed(stile, rail, [rectangle(9.53 - DEPTH_MM, DEPTH_MM, thicknessMm)], 2 * 9.5 * 0.02);
  });

  it("tongue and groove", () => {
    const bearingMm = 41.3 / 2 - 9.53;
    const tongued = edgeLeft(
      {
        kind: "tongue",
        diameterMm: 41.3,
        tongueThicknessMm: 6.35,
        tongueLengthMm: 9.53,
        cuttingLengthMm: 25,
      },
      bearingMm,
      25,
    );
    const grooved = edgeLeft(
      { kind: "groove", diameterMm: 41.3, grooveWidthMm: 6.35, grooveDepthMm: 9.53, cuttingLengthMm: 25 },
      bearingMm,
      25,
    );
    const other = placed(tongued, (x, z) => [9.53 - x, z]);
    expectClosed(grooved, other, [rectangle(9.53 - DEPTH_MM, DEPTH_MM, 25)], 1e-4);
  });

  it("finger joint: the same cut, turned over and set one finger higher", () => {
    for (const taperDeg of [undefined, 8]) {
      const form: Form = {
        kind: "finger-joint",
        diameterMm: 35,
        fingers: 5,
        fingerHeightMm: 4,
        fingerDepthMm: 9,
        ...(taperDeg !== undefined && { taperDeg }),
      };
      const lengthMm = 36;
      const left = edgeLeft(form, 35 / 2 - 9, lengthMm);
      const higher = placed(left, (x, z) => [9 - x, z + 4]);
      // Compared where both exist: from the first finger of one to the last of the other.
      const shared = rectangle(9 - DEPTH_MM, DEPTH_MM, lengthMm - 4).map((ring) =>
        ring.map(([x, z]): [number, number] => [x, z === 0 ? 6 : z - 2]),
      );
      expectClosed(
        polygonClipping.intersection(left, [shared]),
        polygonClipping.intersection(higher, [shared]),
        [shared],
        1e-4,
      );
    }
  });

  it("lock-mitre: one board lying and one standing, at one height and one fence", () => {
    const form: Form = { kind: "lock-mitre", diameterMm: 69.9, cuttingLengthMm: 22, lockDepthMm: 2.5 };
    const lying = edgeLeft(form, 69.9 / 2 - 22, 22);
    const corner = [rectangle(0, 22, 22)];
    const half = polygonClipping.intersection(lying, corner);
    // The other board stands against the fence and goes in turned half way round the middle of the mitre.
    const standing = placed(half, (x, z) => [22 - x, 22 - z]);
    expectClosed(half, standing, corner, 1e-4);
  });
});
