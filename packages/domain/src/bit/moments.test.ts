import { describe, expect, it } from "vitest";
import { moments, stretchesAbove } from "./moments.ts";
import { arc, line, type Segment } from "./outline.ts";

const R = 12.7;
const HEMISPHERE = arc(0, R, { centreMm: R, centreRadiusMm: 0, arcRadiusMm: R, side: 1 });
const CONE = line(0, 30, 0, 10);
const TORUS_HALF = arc(-4, 4, { centreMm: 0, centreRadiusMm: 20, arcRadiusMm: 4, side: 1 });
const TORUS_INNER = arc(-4, 4, { centreMm: 0, centreRadiusMm: 20, arcRadiusMm: 4, side: -1 });

/** Composite Simpson's rule, an independent way to the same integrals. */
function simpson(f: (t: number) => number, from: number, to: number, panels = 20_000): number {
  const h = (to - from) / panels;
  let sum = f(from) + f(to);
  for (let i = 1; i < panels; i += 1) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}

function radiusAt(segment: Segment, t: number): number {
  if (segment.kind === "line") {
    const along = (t - segment.fromMm) / (segment.toMm - segment.fromMm);
    return segment.startRadiusMm + along * (segment.endRadiusMm - segment.startRadiusMm);
  }
  return (
    segment.centreRadiusMm + segment.side * Math.sqrt(segment.arcRadiusMm ** 2 - (t - segment.centreMm) ** 2)
  );
}

describe("moments against solids known in closed form", () => {
  it("gives a hemisphere's volume ⅔πR³, its centre of mass ⅝R from the tip and inertia ⅖mR²", () => {
    const found = moments(HEMISPHERE, HEMISPHERE);
    const volume = Math.PI * found.radius2;
    expect(volume).toBeCloseTo((2 / 3) * Math.PI * R ** 3, 9);
    expect(found.firstRadius2 / found.radius2).toBeCloseTo((5 / 8) * R, 9);
    expect((Math.PI / 2) * found.radius4).toBeCloseTo((2 / 5) * volume * R * R, 6);
  });

  it("gives a cone's volume ⅓πr²h, its centre of mass ¾h from the point and inertia 3⁄10·mr²", () => {
    const found = moments(CONE, CONE);
    const volume = Math.PI * found.radius2;
    expect(volume).toBeCloseTo((Math.PI * 100 * 30) / 3, 9);
    expect(found.firstRadius2 / found.radius2).toBeCloseTo(22.5, 9);
    expect((Math.PI / 2) * found.radius4).toBeCloseTo(0.3 * volume * 100, 6);
  });

  it("gives a torus's volume 2π²Rr² as the outer half less the inner", () => {
    const volume =
      Math.PI * (moments(TORUS_HALF, TORUS_HALF).radius2 - moments(TORUS_INNER, TORUS_INNER).radius2);
    expect(volume).toBeCloseTo(2 * Math.PI ** 2 * 20 * 16, 8);
  });

  it.each([
    ["a hemisphere", HEMISPHERE, { fromMm: 2, toMm: 11 }],
    ["a sloping line", CONE, { fromMm: 3, toMm: 29 }],
    ["an outward arc", TORUS_HALF, { fromMm: -3, toMm: 2.5 }],
    ["an inward arc", TORUS_INNER, { fromMm: -1, toMm: 3.5 }],
  ])("agrees with Simpson's rule on part of %s", (_, segment, stretch) => {
    const found = moments(segment, stretch);
    const integral = (f: (r: number, t: number) => number) =>
      simpson((t) => f(radiusAt(segment, t), t), stretch.fromMm, stretch.toMm);
    expect(found.radius).toBeCloseTo(
      integral((r) => r),
      7,
    );
    expect(found.radius2).toBeCloseTo(
      integral((r) => r * r),
      6,
    );
    expect(found.firstRadius2).toBeCloseTo(
      integral((r, t) => t * r * r),
      5,
    );
    expect(found.radius4 / integral((r) => r ** 4)).toBeCloseTo(1, 10);
  });
});

describe("stretches above a radius", () => {
  it("cuts a sloping line where it crosses", () => {
    expect(stretchesAbove(CONE, CONE, 5)).toEqual([{ fromMm: 15, toMm: 30 }]);
    expect(stretchesAbove(CONE, CONE, 10)).toEqual([]);
    expect(stretchesAbove(CONE, CONE, -1)).toEqual([{ fromMm: 0, toMm: 30 }]);
  });

  it("keeps the middle of an outward arc and the two ends of an inward one", () => {
    const [outer] = stretchesAbove(TORUS_HALF, TORUS_HALF, 20 + Math.sqrt(16 - 9));
    expect(outer?.fromMm).toBeCloseTo(-3, 12);
    expect(outer?.toMm).toBeCloseTo(3, 12);
    const inner = stretchesAbove(TORUS_INNER, TORUS_INNER, 20 - Math.sqrt(16 - 9));
    expect(inner).toHaveLength(2);
    expect(inner[0]?.toMm).toBeCloseTo(-3, 12);
    expect(inner[1]?.fromMm).toBeCloseTo(3, 12);
  });
});
