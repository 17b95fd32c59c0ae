import {
  bitFaults,
  bitSolid,
  describeFault,
  FORMS,
  formFaults,
  formOutline,
  formPilotRadiusMm,
  outlineLengthMm,
  segmentSpanMm,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { brokenIn } from "./broken-outline.ts";
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
