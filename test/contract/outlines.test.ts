import { type Form, formOutline, outlineLengthMm, removedAreaMm2 } from "@rimwise/domain";
import { describe, expect, test } from "vitest";
import { sharedShop } from "./shop.ts";

const { ask } = sharedShop();

async function convert(path: string, unitMm?: number) {
  const { status, body } = await ask("POST", "/v1/outlines/convert", {
    body: { path, ...(unitMm !== undefined && { unitMm }) },
  });
  return { status, body };
}

/** Sections of two outlines at many settings. */
function expectSameSections(one: Form, other: Form, withinMm2: number) {
  const [outline, again] = [formOutline(one), formOutline(other)];
  expect(outlineLengthMm(again)).toBeCloseTo(outlineLengthMm(outline), 6);
  for (const share of [0.3, 0.6, 1]) {
    for (const fenceMm of [6.35, 9, 14]) {
      const setting = { heightMm: share * outlineLengthMm(outline), fenceMm, thicknessMm: 19 };
      expect(Math.abs(removedAreaMm2(again, setting) - removedAreaMm2(outline, setting))).toBeLessThan(
        withinMm2,
      );
    }
  }
}

// A round-over of 12.7 mm above a pilot of 12.7 mm: drawn standing on its tip, the shank upward.
const ROUND_OVER: Form = { kind: "round-over", diameterMm: 38.1, radiusMm: 12.7, pilotHeightMm: 5 };

describe("an outline drawn as an SVG path", () => {
  test.each([
    ["with an arc", "M 6.35 0 V -5 A 12.7 12.7 0 0 1 19.05 -17.7", 1],
    ["relative", "m 6.35 0 v -5 a 12.7 12.7 0 0 1 12.7 -12.7", 1],
    ["in inches", "M .25 0 V -.196850393701 a .5 .5 0 0 1 .5 -.5", 25.4],
    ["in tenths of a millimetre", "M63.5,0V-50A127,127,0,0,1,190.5-177", 0.1],
  ])("is the same bit: %s", async (_, path, unitMm) => {
    const { status, body } = await convert(path, unitMm);
    expect(status).toBe(200);
    expect(body.toleranceMm).toBe(0);
    expect(body.form.diameterMm).toBeCloseTo(38.1, 6);
    expectSameSections(ROUND_OVER, body.form, 2e-5);
  });

  test("goes onto the rack as it is answered", async () => {
    const { body } = await ask("POST", "/v1/outlines/convert", {
      body: { path: "M 6.35 0 V -5 A 12.7 12.7 0 0 1 19.05 -17.7" },
    });
    const kept = await ask("POST", "/v1/bits", {
      body: { name: "Drawn round-over", form: body.form, shankDiameterMm: 12.7, wings: 2 },
    });
    expect(kept.status).toBe(201);
    expect(kept.body.form).toEqual(body.form);
  });

  test("maps lines, steps and arcs one to one", async () => {
    const { body } = await convert("M 0 0 H 10 V -3 L 8 -6 A 4 4 0 0 0 8 -14 H 5 V -20");
    expect(body.form).toEqual({
      kind: "custom",
      diameterMm: 24,
      startRadiusMm: 0,
      segments: [
        { kind: "line", toMm: 0, radiusMm: 10 },
        { kind: "line", toMm: 3, radiusMm: 10 },
        { kind: "line", toMm: 6, radiusMm: 8 },
        { kind: "arc", toMm: 14, radiusMm: 8, arcRadiusMm: 4, bulge: "outward" },
        { kind: "line", toMm: 14, radiusMm: 5 },
        { kind: "line", toMm: 20, radiusMm: 5 },
      ],
    });
  });

  test("has arcs too small for their ends enlarged, as SVG does", async () => {
    const { body } = await convert("M 19.05 0 A 5 5 0 0 1 19.05 -19.06");
    expect(body.form.segments).toEqual([
      { kind: "arc", toMm: 19.06, radiusMm: 19.05, arcRadiusMm: 9.53, bulge: "inward" },
    ]);
    const bullnose: Form = { kind: "bullnose", diameterMm: 38.1, radiusMm: 9.53 };
    expectSameSections(bullnose, body.form, 2e-5);
  });

  // A quarter circle as drawing programs write it: control points at 0.5522847 of the radius (standard; at most 0.03 %
  // of the radius off).
  const QUARTER: readonly [number, number][] = [
    [6.35, 5],
    [6.35, 12.0140157],
    [12.0359843, 17.7],
    [19.05, 17.7],
  ];

  test("of Bézier curves stays as near to them as it says", async () => {
    const { body } = await convert("M 6.35 0 V -5 C 6.35 -12.0140157 12.0359843 -17.7 19.05 -17.7");
    expect(body.toleranceMm).toBe(0.01);
    const ends = [{ radiusMm: 6.35, toMm: 5 }, ...body.form.segments.slice(1)];
    const misses = Array.from({ length: 401 }, (_, i) => {
      const [x, y] = bernstein(QUARTER, i / 400);
      return Math.min(...ends.slice(1).map((end, index) => distanceTo(x, y, ends[index], end)));
    });
    // Ends are rounded to a millionth.
    expect(Math.max(...misses)).toBeLessThan(0.01 + 2e-6);
    expect(Math.max(...misses)).toBeGreaterThan(0.001);
  });

  test("a quarter circle drawn as a Bézier curve has the sections of the arc", async () => {
    const { body } = await convert("M 6.35 0 v -5 c 0 -7.0140157 5.6859843 -12.7 12.7 -12.7");
    // 20 mm of curve, 0.01 mm of chords and 0.0003 of 12.7 mm.
    expectSameSections(ROUND_OVER, body.form, 20 * (0.01 + 0.0003 * 12.7));
  });

  test("a parabola drawn as a quadratic curve has the area Archimedes gives it", async () => {
    // Inside the square of 20 its corner cuts off, by the parabola's rule, a sixth.
    const { body } = await convert("M 0 0 Q 20 0 20 -20");
    const area = removedAreaMm2(formOutline(body.form), { heightMm: 20, fenceMm: 0, thicknessMm: 20 });
    expect(Math.abs(area - (5 / 6) * 400)).toBeLessThan(0.01 * 35);
  });

  test("of very many curves is taken coarser, and says so", async () => {
    const waves = Array.from(
      { length: 6 },
      (_, index) => `C 16 ${-4 * index - 1} 24 ${-4 * index - 3} 20 ${-4 * index - 4}`,
    );
    const { status, body } = await convert(`M 20 0 ${waves.join(" ")}`);
    expect(status).toBe(200);
    expect(body.toleranceMm).toBeGreaterThan(0.01);
    expect(body.form.segments.length).toBeLessThanOrEqual(60);
  });
});

describe("a path that is no outline is refused, with what is accepted", () => {
  test.each<[string, string, RegExp, RegExp]>([
    ["no path at all", "round and round", /not SVG path data/, /such as M/],
    ["a path cut short", "M 4 0 L 5", /not SVG path data/, /such as M/],
    ["only a start", "M 4 0", /no line/, /at least one line/],
    ["one that starts above the tip", "M 4 -2 V -10", /does not start at the tip/, /y = 0/],
    ["one drawn head down", "M 4 0 V 10 L 8 20", /Command 2.*distance from the tip/, /0 to 120/],
    ["a line back to the tip", "M 4 0 V -10 L 8 -5", /Command 3.*turns back/, /at or above where it starts/],
    ["an arc past its equator", "M 4 0 A 3 3 0 0 1 9 -1", /Command 2.*turns back/, /upward all the way/],
    [
      "an arc of more than half a circle",
      "M 4 0 A 6 6 0 1 0 4 -8",
      /more than half a circle/,
      /at most half/,
    ],
    ["a curve that turns back", "M 4 0 C 20 -10 0 -12 10 -6", /Command 2.*turns back/, /at or above/],
    ["a point left of the axis", "M 4 0 L -1 -10", /Command 2.*distance from the axis/, /0 to 60/],
    [
      "an arc through the axis",
      "M 1 0 A 6 6 0 0 1 1 -10 H 9 V -12",
      /Command 2.*radius of its arc/,
      /at least 13/,
    ],
    ["an arc of an ellipse", "M 4 0 A 6 3 0 0 1 9 -5", /ellipse/, /rx = ry/],
    ["a second path", "M 4 0 V -10 M 8 -10 V -20", /Command 3 starts a second path/, /one open path/],
    ["a closed path", "M 0 0 H 8 V -10 Z", /Command 4 closes/, /one open path/],
    ["one larger than any bit", "M 4 0 L 90 -10", /Command 2.*distance from the axis/, /0 to 60/],
    ["one smaller than any bit", "M 0.1 0 V -4", /as wide as this/, /1 to 120 mm across/],
    ["one that bulges past any bit", "M 55 0 A 20 20 0 0 0 55 -40", /as wide as this/, /1 to 120 mm across/],
    ["a curve to the stars", "M 4 0 C 1e300 -1e300 4 -1e300 4 -20", /too long/, /at most 60/],
    ["a line without end", "M 4 0 L 1e999 -5", /Command 2.*finite/, /finite numbers/],
    ["a curve without end", "M 4 0 C 4 -1e999 8 -9 8 -1e999", /Command 2.*finite/, /finite numbers/],
    ["one that starts left of the axis", "M -4 0 L 4 -4", /Where the path starts/, /0 to 60/],
    ["only a step", "M 0 0 H 8", /Command 2.*distance from the tip/, /more than 0/],
    [
      "too many lines",
      `M 4 0 ${Array.from({ length: 61 }, (_, index) => `V ${-index - 1}`).join(" ")}`,
      /too long/,
      /at most 60/,
    ],
  ])("%s", async (_, path, message, accepted) => {
    const { status, body } = await convert(path);
    expect(status).toBe(422);
    expect(body.code).toBe("not-valid");
    expect(body.errors[0]).toMatchObject({ in: "body", pointer: "/path" });
    expect(body.errors[0].message).toMatch(message);
    expect(body.errors[0].accepted).toMatch(accepted);
  });

  test("and so are a scale of nothing and a misspelt key", async () => {
    expect((await convert("M 4 0 V -10", 0)).body.errors[0].pointer).toBe("/unitMm");
    const { status, body } = await ask("POST", "/v1/outlines/convert", { body: { d: "M 4 0 V -10" } });
    expect(status).toBe(422);
    expect(body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual(
      expect.arrayContaining(["/d", "/path"]),
    );
  });

  test("and a caller without a key", async () => {
    const answer = await ask("POST", "/v1/outlines/convert", { body: { path: "M 4 0 V -10" }, key: null });
    expect(answer.status).toBe(401);
  });
});

/** A point of a cubic Bézier curve by its Bernstein polynomials. */
function bernstein(corners: readonly [number, number][], share: number): [number, number] {
  const weights = [1, 3, 3, 1].map((count, k) => count * share ** k * (1 - share) ** (3 - k));
  const sum = (axis: 0 | 1) =>
    corners.reduce((total, corner, k) => total + corner[axis] * (weights[k] ?? 0), 0);
  return [sum(0), sum(1)];
}

type End = { radiusMm: number; toMm: number };

function distanceTo(x: number, y: number, from: End, to: End): number {
  const [dx, dy] = [to.radiusMm - from.radiusMm, to.toMm - from.toMm];
  const along = ((x - from.radiusMm) * dx + (y - from.toMm) * dy) / (dx * dx + dy * dy);
  const share = Math.max(0, Math.min(1, along));
  return Math.hypot(x - from.radiusMm - share * dx, y - from.toMm - share * dy);
}
