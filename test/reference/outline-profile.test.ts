import {
  type BitSetting,
  edgeLengthInUseMm,
  formOutline,
  outlineLengthMm,
  type Profile,
  type ProfilePoint,
  profileAfter,
  profileAfterPasses,
  removedAreaMm2,
} from "@rimwise/domain";
import polygonClipping, { type MultiPolygon, type Ring } from "polygon-clipping";
import { describe, expect, it } from "vitest";
import { EXAMPLE_FORMS, nameOf } from "./example-forms.ts";
import { area, cuttingPolygons, differenceArea, rectangle, wholePolygons } from "./polygons.ts";

// The cross-section left after a cut against polygon-clipping: the work as a rectangle, less the bit.

const DEPTH_MM = 60;
const THICKNESS_MM = 22;

const cases = EXAMPLE_FORMS.map((form) => [nameOf(form), formOutline(form), form.diameterMm / 2] as const);

describe("the profile of an edge", () => {
  it.each(cases)("%s", (_, outline, rimMm) => {
    for (const heightShare of [0.4, 1]) {
      for (const fenceShare of [0.35, 0.7]) {
        const heightMm = heightShare * outlineLengthMm(outline);
        const setting = { heightMm, fenceMm: fenceShare * rimMm, thicknessMm: THICKNESS_MM };
        const profile = profileAfter(outline, setting, { sides: 1, depthMm: DEPTH_MM });
        expect(profile).toHaveLength(1);
        const want = polygonClipping.difference(
          rectangle(0, DEPTH_MM, THICKNESS_MM),
          ...cuttingPolygons(outline, heightMm, setting.fenceMm, 1000),
        );
        expectSame(profile, want, edgeLengthInUseMm(outline, setting));
        const goneMm2 = DEPTH_MM * THICKNESS_MM - area(polygonsOf(profile));
        expect(Math.abs(goneMm2 - removedAreaMm2(outline, setting))).toBeLessThan(chordErrorMm2(outline));
      }
    }
  });
});

describe("the profile of a groove", () => {
  it.each(cases)("%s", (_, outline) => {
    for (const heightShare of [0.4, 1]) {
      const heightMm = heightShare * outlineLengthMm(outline);
      for (const thicknessMm of [heightMm + 6, Math.max(3, heightMm - 1)]) {
        const setting = { heightMm, fenceMm: 0, thicknessMm };
        const profile = profileAfter(outline, setting, { sides: 2, depthMm: DEPTH_MM });
        const want = polygonClipping.difference(
          rectangle(-DEPTH_MM, DEPTH_MM, thicknessMm),
          wholePolygons(outline, heightMm, 1000),
        );
        expectSame(profile, want, 2 * edgeLengthInUseMm(outline, setting));
        expect(differenceArea(polygonsOf(profile), mirrored(polygonsOf(profile)))).toBe(0);
      }
    }
  });
});

describe("the profile after several passes", () => {
  it.each(cases)("keeps what every pass removed: %s", (_, outline, rimMm) => {
    const lengthMm = outlineLengthMm(outline);
    // Up, out and partly down again, so that no pass holds all the others.
    const settings: BitSetting[] = [
      { heightMm: 0.5 * lengthMm, fenceMm: 0.3 * rimMm, thicknessMm: THICKNESS_MM },
      { heightMm: lengthMm, fenceMm: 0.6 * rimMm, thicknessMm: THICKNESS_MM },
      { heightMm: 0.8 * lengthMm, fenceMm: 0.5 * rimMm, thicknessMm: THICKNESS_MM },
    ];
    const profiles = profileAfterPasses(outline, settings, { sides: 1, depthMm: DEPTH_MM });
    expect(profiles).toHaveLength(settings.length);
    let left: MultiPolygon = [rectangle(0, DEPTH_MM, THICKNESS_MM)];
    settings.forEach(({ heightMm, fenceMm }, index) => {
      left = polygonClipping.difference(left, ...cuttingPolygons(outline, heightMm, fenceMm, 300));
      const profile = profiles[index] ?? [];
      expect(differenceArea(polygonsOf(profile), left)).toBeLessThan(2 * chordErrorMm2(outline) + 1e-4);
    });
  });

  it("shows every pass to one depth, 10 mm past the widest cut", () => {
    const outline = formOutline({ kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 });
    const settings = [8, 12, 17.46].map((heightMm) => ({ heightMm, fenceMm: 6.35, thicknessMm: 19 }));
    const shown = profileAfterPasses(outline, settings, { sides: 1 }).map((profile) =>
      Math.max(...pointsOf(profile).map(({ xMm }) => xMm)),
    );
    for (const depthMm of shown) expect(depthMm).toBeCloseTo(12.7 + 10, 6);
  });
});

describe("shapes of grooves", () => {
  it("a T-slot not cut through leaves one piece, and cut through two", () => {
    const outline = formOutline({
      kind: "t-slot",
      diameterMm: 28.6,
      headHeightMm: 9.5,
      neckDiameterMm: 9.5,
      cuttingLengthMm: 25,
    });
    const slot = (thicknessMm: number) =>
      profileAfter(outline, { heightMm: 25, fenceMm: 0, thicknessMm }, { sides: 2 });
    expect(slot(30)).toHaveLength(1);
    expect(slot(30)[0]?.boundary).toHaveLength(12);
    expect(slot(30)[0]?.holes).toEqual([]);
    expect(slot(20)).toHaveLength(2);
  });

  it("two cutters with a bearing between leave a cavity open to the face and one inside", () => {
    const outline = formOutline({
      kind: "tongue",
      diameterMm: 40,
      tongueThicknessMm: 6,
      tongueLengthMm: 8,
      cuttingLengthMm: 20,
    });
    const [piece] = profileAfter(outline, { heightMm: 20, fenceMm: 0, thicknessMm: 30 }, { sides: 2 });
    expect(piece?.boundary).toHaveLength(8);
    expect(piece?.holes.map((hole) => hole.map(({ xMm, zMm }) => [xMm, zMm]))).toEqual([
      [
        [20, 13],
        [20, 20],
        [-20, 20],
        [-20, 13],
      ],
    ]);
  });

  it("a finer tolerance comes nearer to the arc, and no chord is farther from it than was asked", () => {
    const outline = formOutline({ kind: "core-box", diameterMm: 19, cuttingLengthMm: 25 });
    for (const toleranceMm of [0.5, 0.02, 0.001]) {
      const profile = profileAfter(
        outline,
        { heightMm: 9.5, fenceMm: 0, thicknessMm: 20 },
        { sides: 2, toleranceMm },
      );
      const arc = pointsOf(profile).filter(({ zMm, xMm }) => zMm < 9.6 && Math.abs(xMm) < 9.6);
      const middles = arc.slice(1).map(({ xMm, zMm }, index) => {
        const before = arc[index] ?? { xMm, zMm };
        return Math.hypot((xMm + before.xMm) / 2, (zMm + before.zMm) / 2);
      });
      const farthestMm = Math.max(...middles.map((radiusMm) => 9.5 - radiusMm));
      expect(farthestMm).toBeLessThanOrEqual(toleranceMm + 1e-9);
      expect(farthestMm).toBeGreaterThan(toleranceMm / 4);
    }
  });
});

/** What chords of the default tolerance, 0.02 mm, may miss along all of an outline. */
function chordErrorMm2(outline: ReturnType<typeof formOutline>): number {
  const curvedMm = outline.reduce(
    (sum, segment) => sum + (segment.kind === "arc" ? Math.PI * Math.min(segment.arcRadiusMm, 60) : 0),
    0,
  );
  return 0.02 * curvedMm + 1e-6;
}

/** Chords within 0.02 mm of what cuts, on each side; and corners on a grid of a millionth of a millimetre. */
function expectSame(profile: Profile, want: MultiPolygon, cutLengthMm: number): void {
  expect(differenceArea(polygonsOf(profile), want)).toBeLessThan(0.02 * cutLengthMm + 1e-4);
  expect(profile.length).toBe(want.length);
}

function polygonsOf(profile: Profile): MultiPolygon {
  return profile.map(({ boundary, holes }) => [boundary, ...holes].map(ring));
}

function ring(points: readonly ProfilePoint[]): Ring {
  return points.map(({ xMm, zMm }): [number, number] => [xMm, zMm]);
}

function mirrored(polygons: MultiPolygon): MultiPolygon {
  return polygons.map((rings) => rings.map((each) => each.map(([x, z]): [number, number] => [-x, z])));
}

function pointsOf(profile: Profile): ProfilePoint[] {
  return profile.flatMap(({ boundary, holes }) => [...boundary, ...holes.flat()]);
}
