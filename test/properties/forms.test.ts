import {
  bitFaults,
  bitSolid,
  describeFault,
  FORMS,
  type Form,
  formFaults,
  formOutline,
  formPilotRadiusMm,
  type GivenSegment,
  type Outline,
  outlineLengthMm,
  radiusOnSegmentMm,
  segmentSpanMm,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drafts, formsOf, isForm } from "./form-arbitraries.ts";

const RUNS = { numRuns: process.env["CI"] === undefined ? 60 : 200 };

describe.each(FORMS)("every $kind bit", (summary) => {
  const forms = formsOf(summary);

  it("has an outline that runs from the tip without a gap", () => {
    fc.assert(
      fc.property(forms, (form) => {
        let reachedMm = 0;
        for (const { fromMm, toMm } of formOutline(form)) {
          expect(Math.abs(fromMm - reachedMm)).toBeLessThan(1e-9);
          expect(toMm).toBeGreaterThan(fromMm);
          reachedMm = toMm;
        }
        expect(reachedMm).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  it("is nowhere thinner than nothing, and as wide as its diameter", () => {
    fc.assert(
      fc.property(forms, (form) => {
        const spans = formOutline(form).map(segmentSpanMm);
        expect(Math.min(...spans.map(({ leastMm }) => leastMm))).toBeGreaterThanOrEqual(-1e-9);
        // The bearing of a flush-trim bit that was sharpened stands out past its edges.
        const edges = formOutline(form).filter(({ role }) => role === "edge");
        const widestMm = 2 * Math.max(...edges.map((segment) => segmentSpanMm(segment).greatestMm));
        expect(Math.abs(widestMm - form.diameterMm)).toBeLessThanOrEqual(
          form.kind === "custom" ? 0.05 : 2e-9,
        );
      }),
      RUNS,
    );
  });

  it("cuts nothing nearer to the axis than its pilot", () => {
    fc.assert(
      fc.property(forms, (form) => {
        const pilotMm = formPilotRadiusMm(form);
        // A flush-trim bit that was sharpened cuts inside its bearing: that is why it no longer trims flush.
        if (pilotMm === undefined || form.kind === "flush-trim") return;
        expect(pilotMm).toBeGreaterThan(0);
        // A custom outline and its pilot are measured apart.
        const slackMm = form.kind === "custom" ? 0.05 : 1e-9;
        for (const segment of formOutline(form).filter(({ role }) => role === "edge")) {
          expect(segmentSpanMm(segment).leastMm).toBeGreaterThanOrEqual(pilotMm - slackMm);
        }
      }),
      RUNS,
    );
  });

  it("has finite numbers everywhere, a mass and a centre of mass inside its length", () => {
    fc.assert(
      fc.property(forms, fc.constantFrom(6, 8, 12.7), (form, shankDiameterMm) => {
        const outline = formOutline(form);
        expect(numbersIn(outline).every(Number.isFinite)).toBe(true);
        const bit = { form, shankDiameterMm, wings: 2 };
        expect(bitFaults(bit)).toEqual([]);
        const solid = bitSolid(bit);
        expect(numbersIn(solid).every(Number.isFinite)).toBe(true);
        expect(solid.massG).toBeGreaterThan(0);
        expect(solid.polarInertiaKgM2).toBeGreaterThan(0);
        expect(solid.headCentreMm).toBeGreaterThan(0);
        expect(solid.headCentreMm).toBeLessThan(outlineLengthMm(outline));
      }),
      RUNS,
    );
  });

  it("is refused, whatever is typed, before its outline would break any of that", () => {
    fc.assert(
      fc.property(drafts(summary), (draft) => {
        if (!isForm(draft) || formFaults(draft).length > 0) return;
        expect(brokenIn(formOutline(draft))).toEqual([]);
      }),
      RUNS,
    );
  });

  it("is refused, whatever is typed, with a value that its field would take, or with the word that none does", () => {
    fc.assert(
      fc.property(drafts(summary), (draft) => {
        if (!isForm(draft)) return;
        for (const fault of formFaults(draft)) {
          const { accepted } = describeFault(fault);
          expect(accepted).not.toMatch(/Infinity|NaN/);
          const [, bound, text] = /^(at most|at least|less than) (\S+)$/.exec(accepted) ?? [];
          if (bound === undefined || fault.pointer.startsWith("/segments")) continue;
          const { min, max } = Object(summary.dimensions[fault.pointer.slice(1)]);
          if (bound === "at least") expect(Number(text)).toBeLessThanOrEqual(max);
          else expect(Number(text)).toBeGreaterThanOrEqual(min);
        }
      }),
      RUNS,
    );
  });

  it("is refused with one dimension outside its range, and that dimension is named", () => {
    fc.assert(
      fc.property(
        forms,
        fc.constantFrom(...measures(summary.dimensions)),
        fc.constantFrom("below", "above", "not-a-number"),
        (form, [name, { min, max }], side) => {
          const value =
            side === "below" ? min - 0.01 * Math.abs(min) - 0.01 : side === "above" ? max * 1.01 : Number.NaN;
          expect(formFaults({ ...form, [name]: value }).map(({ pointer }) => pointer)).toContain(`/${name}`);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe("a custom outline", () => {
  const line = (toMm: number, radiusMm: number): GivenSegment => ({ kind: "line", toMm, radiusMm });
  const arc = (
    toMm: number,
    radiusMm: number,
    arcRadiusMm: number,
    bulge: "outward" | "inward",
  ): GivenSegment => ({ kind: "arc", toMm, radiusMm, arcRadiusMm, bulge });
  const given = (
    diameterMm: number,
    startRadiusMm: number,
    segments: readonly GivenSegment[],
    pilotDiameterMm?: number,
  ): Form => ({
    kind: "custom",
    diameterMm,
    startRadiusMm,
    segments,
    ...(pilotDiameterMm !== undefined && { pilotDiameterMm }),
  });

  it.each<[string, Form]>([
    ["a point that widens to a parallel part", given(20, 0, [line(10, 10), line(25, 10)])],
    ["a flat tip, closed by a step from the axis", given(20, 0, [line(0, 10), line(15, 10)])],
    ["a hollow quarter circle", given(30, 5, [arc(10, 15, 10, "inward")])],
    [
      "a half circle whose ends were typed to hundredths",
      given(25.4, 12.7, [arc(12.71, 12.7, 6.35, "inward")]),
    ],
    ["an outward half circle, wider than both its ends", given(30, 10, [arc(10, 10, 5, "outward")])],
    ["an inward arc that just touches the axis", given(20, 5, [arc(10, 5, 5, "inward"), line(12, 10)])],
    ["a pilot as its own first part", given(40, 5, [line(4, 5), arc(19, 20, 15, "inward")], 10)],
  ])("is accepted: %s", (_, form) => {
    expect(formFaults(form)).toEqual([]);
    expect(brokenIn(formOutline(form))).toEqual([]);
  });

  it.each<[string, Form, string, string]>([
    [
      "a line that runs back to the tip",
      given(20, 10, [line(10, 10), line(5, 8)]),
      "/segments/1",
      "outline-turns-back",
    ],
    [
      "an arc past its own equator",
      given(20, 5, [arc(2, 10, 3, "outward")]),
      "/segments/0",
      "outline-turns-back",
    ],
    [
      "an arc too small for its ends",
      given(20, 5, [arc(10, 10, 3, "outward")]),
      "/segments/0",
      "outline-turns-back",
    ],
    [
      "an arc with both ends at one distance",
      given(20, 5, [arc(0, 10, 3, "outward")]),
      "/segments/0",
      "outline-turns-back",
    ],
    [
      "an arc that dips through the axis",
      given(20, 1, [arc(10, 1, 6, "inward"), line(12, 10)]),
      "/segments/0/arcRadiusMm",
      "out-of-range",
    ],
    [
      "an arc that bends in between two points on the axis, which no radius mends",
      given(20, 0, [arc(10, 0, 50, "inward"), line(10, 10), line(20, 10)]),
      "/segments/0/arcRadiusMm",
      "no-value-fits",
    ],
    [
      "an outline narrower than any bit, whatever diameter is given",
      given(20, 0.1, [line(10, 0.2)]),
      "/diameterMm",
      "no-value-fits",
    ],
    ["only a step, with no length", given(20, 0, [line(0, 10)]), "/segments/0/toMm", "out-of-range"],
    [
      "a bulge past the diameter",
      given(20, 10, [arc(10, 10, 5, "outward")]),
      "/diameterMm",
      "diameter-not-outline",
    ],
    [
      "a step out and back that has no length",
      given(40, 0, [line(0, 20), line(0, 5), line(9, 5)]),
      "/diameterMm",
      "diameter-not-outline",
    ],
    [
      "edges inside its pilot",
      given(40, 5, [line(4, 5), line(19, 20)], 16),
      "/pilotDiameterMm",
      "out-of-range",
    ],
    [
      "a pilot as wide as the bit",
      given(40, 5, [line(4, 5), line(19, 20)], 40),
      "/pilotDiameterMm",
      "pilot-too-large",
    ],
  ])("is refused: %s", (_, form, pointer, code) => {
    expect(formFaults(form).map((fault) => [fault.pointer, fault.code])).toContainEqual([pointer, code]);
  });

  it("that dips through the axis is refused with the radius that would not", () => {
    const [fault] = formFaults(given(20, 1, [arc(10, 1, 6, "inward"), line(12, 10)]));
    // Through (0, 1) and (10, 1), touching the axis at 5: 5² + 1² = 2·1·R.
    expect(fault).toMatchObject({ code: "out-of-range", values: { min: expect.closeTo(13, 9) } });
    expect(formFaults(given(20, 1, [arc(10, 1, 13.001, "inward"), line(12, 10)]))).toEqual([]);
  });
});

function brokenIn(outline: Outline): string[] {
  const broken: string[] = [];
  let reachedMm = 0;
  for (const segment of outline) {
    if (Math.abs(segment.fromMm - reachedMm) > 1e-9) broken.push(`gap at ${reachedMm}`);
    if (!(segment.toMm > segment.fromMm)) broken.push(`no length at ${segment.fromMm}`);
    reachedMm = segment.toMm;
    for (let share = 0; share <= 1; share += 1 / 64) {
      const radiusMm = radiusOnSegmentMm(segment, segment.fromMm + share * (segment.toMm - segment.fromMm));
      if (!(radiusMm >= -1e-9)) broken.push(`radius ${radiusMm} in the segment from ${segment.fromMm}`);
    }
  }
  return reachedMm > 0 ? broken : [...broken, "no outline"];
}

function measures(dimensions: (typeof FORMS)[number]["dimensions"]) {
  return Object.entries(dimensions).flatMap(([name, spec]) =>
    spec.type === "measure" ? [[name, { min: spec.min, max: spec.max }] as const] : [],
  );
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}
