import {
  FORMS,
  firstContactMm,
  formFaults,
  formOutline,
  outlineLengthMm,
  radiiInUse,
  removedAreaMm2,
} from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { EXAMPLE_FORMS, nameOf } from "./example-forms.ts";
import { area, cuttingPolygons, places, radiusAt, rectangle, sharedWith } from "./polygons.ts";

// Sections of removed wood against polygon-clipping (a general-purpose polygon library): the bit as a
// many-sided polygon, the work as a rectangle, the area and the extent of what they share.

const THICKNESS_MM = 10;

it("the examples are bits, and there is one of every kind", () => {
  expect(EXAMPLE_FORMS.flatMap((form) => formFaults(form))).toEqual([]);
  expect(new Set(EXAMPLE_FORMS.map(({ kind }) => kind))).toEqual(new Set(FORMS.map(({ kind }) => kind)));
});

describe("removed section against a polygon library", () => {
  const cases = EXAMPLE_FORMS.flatMap((form) =>
    [0.3, 0.6, 1].flatMap((heightShare) =>
      [0, 0.4, 0.8].map((fenceShare) => ({
        outline: formOutline(form),
        heightShare,
        fenceMm: (fenceShare * form.diameterMm) / 2,
        name: `${nameOf(form)}; at ${heightShare} of its height, fence ${fenceShare} of its radius`,
      })),
    ),
  );

  it.each(cases.map((each) => [each.name, each] as const))("%s", (_, { outline, heightShare, fenceMm }) => {
    const heightMm = outlineLengthMm(outline) * heightShare;
    const setting = { heightMm, fenceMm, thicknessMm: THICKNESS_MM };
    const shared = sharedWith(cuttingPolygons(outline, heightMm, fenceMm), rectangle(0, 1000, THICKNESS_MM));
    const found = removedAreaMm2(outline, setting);
    expect(Math.abs(found - area(shared))).toBeLessThan(2e-6 * Math.max(1, found) + 2e-5);

    const used = radiiInUse(outline, setting);
    const xs = shared.flatMap((rings) => rings.flatMap((ring) => ring.map(([x]) => x)));
    if (xs.length === 0) {
      expect(used).toBeUndefined();
      return;
    }
    expect(Math.abs((used?.greatestMm ?? 0) - fenceMm - Math.max(...xs))).toBeLessThan(1e-5);
  });
});

describe("least radius in use and first contact against walking along the outline", () => {
  const cases = EXAMPLE_FORMS.flatMap((form) =>
    [0.2, 0.55, 0.9].map((fenceShare) => ({
      outline: formOutline(form),
      fenceMm: (fenceShare * form.diameterMm) / 2,
      name: `${nameOf(form)}; fence ${fenceShare} of its radius`,
    })),
  );

  it.each(cases.map((each) => [each.name, each] as const))("%s", (_, { outline, fenceMm }) => {
    const edges = outline.filter(({ role }) => role === "edge");
    const walked = edges
      .flatMap((segment) =>
        [...places(segment), ...evenly(segment.fromMm, segment.toMm)].map((t) => ({
          t,
          r: radiusAt(segment, t),
        })),
      )
      .filter(({ r }) => r > fenceMm);
    const setting = { heightMm: outlineLengthMm(outline), fenceMm, thicknessMm: outlineLengthMm(outline) };
    const least = Math.min(...walked.map(({ r }) => r));
    const first = Math.min(...walked.map(({ t }) => t));
    if (walked.length === 0) {
      expect(firstContactMm(outline, fenceMm)).toBeUndefined();
      return;
    }
    // Half a step of the walk along the axis, and what the steepest slope makes of it.
    expect(Math.abs((firstContactMm(outline, fenceMm) ?? 0) - first)).toBeLessThan(0.03);
    expect(radiiInUse(outline, setting)?.leastMm ?? 0).toBeLessThanOrEqual(least + 1e-9);
    expect(radiiInUse(outline, setting)?.leastMm ?? 0).toBeGreaterThan(least - 0.05);
  });
});

function evenly(from: number, to: number): number[] {
  const count = 2000;
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
}
