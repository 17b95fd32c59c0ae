import {
  type BitSetting,
  edgeLengthInUseMm,
  formOutline,
  type Outline,
  outlineLengthMm,
} from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { EXAMPLE_FORMS, nameOf } from "./example-forms.ts";
import { places, radiusAt } from "./polygons.ts";

describe("length of edge in use, from elementary geometry", () => {
  const rounding = formOutline({ kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 });

  it("a quarter round cuts with a quarter of its circle", () => {
    const setting = { heightMm: 4.76 + 12.7, fenceMm: 6.35, thicknessMm: 19 };
    expect(edgeLengthInUseMm(rounding, setting)).toBeCloseTo((Math.PI / 2) * 12.7, 9);
  });

  it("a chamfer of 45° cuts with the hypotenuse", () => {
    const outline = formOutline({ kind: "chamfer", diameterMm: 32, angleDeg: 45, pilotDiameterMm: 12 });
    const setting = { heightMm: 4.76 + 10, fenceMm: 6, thicknessMm: 19 };
    expect(edgeLengthInUseMm(outline, setting)).toBeCloseTo(10 * Math.SQRT2, 9);
  });

  it("a straight bit in a rabbet cuts with its side and its end, and in a through cut with its side alone", () => {
    const outline = formOutline({ kind: "straight", diameterMm: 12, cuttingLengthMm: 25 });
    expect(edgeLengthInUseMm(outline, { heightMm: 8, fenceMm: 2, thicknessMm: 19 })).toBeCloseTo(8 + 4, 12);
    expect(edgeLengthInUseMm(outline, { heightMm: 25, fenceMm: 2, thicknessMm: 19 })).toBeCloseTo(19, 12);
  });

  it("a bit that misses the work cuts with nothing", () => {
    expect(edgeLengthInUseMm(rounding, { heightMm: 4, fenceMm: 6.35, thicknessMm: 19 })).toBe(0);
    expect(edgeLengthInUseMm(rounding, { heightMm: 17, fenceMm: 30, thicknessMm: 19 })).toBe(0);
  });
});

describe("length of edge in use against a polyline along the cut", () => {
  const cases = EXAMPLE_FORMS.map((form) => [nameOf(form), formOutline(form), form.diameterMm / 2] as const);

  it.each(cases)("%s", (_, outline, rimMm) => {
    for (const heightShare of [0.45, 1]) {
      for (const fenceShare of [0.15, 0.5, 0.75]) {
        const heightMm = heightShare * outlineLengthMm(outline);
        const setting = { heightMm, fenceMm: fenceShare * rimMm, thicknessMm: 14 };
        const walkedMm = polylineMm(outline, setting);
        // The polyline is the shorter: its chords cut the corners of 4000-sided arcs and of the fence face.
        expect(Math.abs(edgeLengthInUseMm(outline, setting) - walkedMm)).toBeLessThan(0.02);
      }
    }
  });
});

/** The boundary of the cut point by point: width against distance from the tip, steps where it jumps. */
function polylineMm(outline: Outline, { heightMm, fenceMm, thicknessMm }: BitSetting): number {
  const bottomMm = heightMm - thicknessMm;
  const points: [number, number][] = [[bottomMm, 0]];
  for (const segment of outline) {
    const fromMm = Math.max(segment.fromMm, bottomMm);
    const toMm = Math.min(segment.toMm, heightMm);
    if (toMm <= fromMm) continue;
    const isEdge = segment.role === "edge";
    for (const t of placesBetween(segment, fromMm, toMm)) {
      points.push([t, isEdge ? Math.max(0, radiusAt(segment, t) - fenceMm) : 0]);
    }
  }
  const [, ...inWork] = points;
  // The faces of the work bound the cut, not the bit: what stands at them is not walked.
  const first = inWork[0];
  const walked =
    first !== undefined && first[0] > bottomMm ? [[first[0], 0] as [number, number], ...inWork] : inWork;
  const last = walked.at(-1);
  if (last !== undefined && last[0] < heightMm) walked.push([last[0], 0]);
  return walked.slice(1).reduce((sum, [t, width], index) => {
    const [beforeT, beforeWidth] = walked[index] ?? [t, width];
    if (width === 0 && beforeWidth === 0) return sum;
    return sum + Math.hypot(t - beforeT, width - beforeWidth);
  }, 0);
}

function placesBetween(segment: Outline[number], fromMm: number, toMm: number): number[] {
  const evenly = Array.from({ length: 4001 }, (_, i) => fromMm + ((toMm - fromMm) * i) / 4000);
  return [...places(segment).filter((t) => t >= fromMm && t <= toMm), ...evenly].sort((a, b) => a - b);
}
