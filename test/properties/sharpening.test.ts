import {
  type Bit,
  bitFaults,
  bitSolid,
  DomainError,
  FORMS,
  formDiameterMm,
  formOutline,
  formPilotRadiusMm,
  type Sharpening,
  sharpened,
  sharpeningsLeft,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EXAMPLE_FORMS } from "../reference/example-forms.ts";
import { EDGES, planOf } from "../reference/set-up-plans.ts";
import { bits } from "./arbitraries.ts";
import { formsOf } from "./form-arbitraries.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const RUNS = { numRuns: 1000 };

/** What measuring may miss: as the domain has it, repeated so that a change shows. */
const SLACK_MM = 0.05;
const SLACK_G = 1;

const everyBit: fc.Arbitrary<Bit> = fc
  .oneof(
    bits,
    fc.record({
      form: fc.oneof(...FORMS.map(formsOf)),
      shankDiameterMm: fc.constantFrom(6.35, 12.7),
      wings: fc.integer({ min: 1, max: 4 }),
    }),
  )
  .filter((bit) => bitFaults(bit).length === 0);

/** Forms that may carry a bearing; an outline given point by point is measured again as a whole. */
const PILOTED = new Set(
  EXAMPLE_FORMS.filter((form) => formPilotRadiusMm(form) !== undefined && form.kind !== "custom").map(
    ({ kind }) => kind,
  ),
);

const shares = fc.option(number(0.5, 1.1), { nil: undefined });

describe("a sharpening", () => {
  it("gives a bit that is sound and no larger or heavier, or says which field is not", () => {
    let sharpenedBits = 0;
    fc.assert(
      fc.property(everyBit, shares, shares, (bit, diameterShare, massShare) => {
        const sharpening: Sharpening = {
          ...(diameterShare === undefined ? {} : { diameterMm: diameterShare * bit.form.diameterMm }),
          ...(massShare === undefined ? {} : { massG: massShare * (bit.massG ?? bitSolid(bit).massG) }),
        };
        const next = outcome(bit, sharpening);
        if (Array.isArray(next)) {
          for (const pointer of next) expect(pointer).toMatch(/^\/(diameterMm|massG|form)/);
          return;
        }
        sharpenedBits += 1;
        expect(bitFaults(next)).toEqual([]);
        expect(formDiameterMm(next.form)).toBeLessThanOrEqual(formDiameterMm(bit.form) + SLACK_MM + 1e-9);
        if (bit.massG !== undefined) expect(next.massG).toBeLessThanOrEqual(bit.massG + SLACK_G);
        if (bit.massG !== undefined && massShare === undefined) expect(next.massG).toBe(bit.massG);
      }),
      RUNS,
    );
    expect(sharpenedBits).toBeGreaterThan(RUNS.numRuns / 10);
  });

  // Only the cutter is ground: a bearing is a bought part (common practice).
  it.each(FORMS.filter(({ kind }) => PILOTED.has(kind)))(
    "never shrinks or moves the bearing of a $kind bit",
    (summary) => {
      let ground = 0;
      fc.assert(
        fc.property(formsOf(summary), number(0.85, 0.999), fc.boolean(), (form, share, isWhole) => {
          const bit = { form, shankDiameterMm: 6.35, wings: 2 };
          fc.pre(bitFaults(bit).length === 0 && formPilotRadiusMm(form) !== undefined);
          const diameterMm = share * form.diameterMm;
          // Measured whole, a bearing that nobody measured is the one it was.
          const next = outcome(bit, isWhole ? { form: { ...form, diameterMm } } : { diameterMm });
          if (Array.isArray(next)) return;
          ground += 1;
          expect(bearingsOf(next)).toEqual(bearingsOf(bit));
          expect(formDiameterMm(next.form)).toBeCloseTo(diameterMm, 9);
        }),
        { numRuns: 150 },
      );
      expect(ground).toBeGreaterThan(10);
    },
  );

  it("that measured nothing leaves the bit as it was", () => {
    fc.assert(
      fc.property(everyBit, (bit) => {
        expect(sharpened(bit, {})).toEqual(bit);
        expect(sharpened(bit, { form: bit.form })).toEqual(bit);
      }),
      { numRuns: 300 },
    );
  });
});

// Geometry: a bearing between the cutters lies as deep under their rim as the groove they cut.
describe("a groove bit that was sharpened", () => {
  const form = {
    kind: "groove",
    diameterMm: 41,
    grooveWidthMm: 6,
    grooveDepthMm: 9.5,
    cuttingLengthMm: 22,
  } as const;
  const bit: Bit = { form, shankDiameterMm: 12.7, wings: 2 };

  it("cuts less deep on the bearing it has", () => {
    expect(sharpened(bit, { diameterMm: 40.6 }).form).toEqual({
      ...form,
      diameterMm: 40.6,
      grooveDepthMm: 9.3,
    });
  });

  it("is refused a depth that only a smaller bearing would give", () => {
    const faults = outcome(bit, { form: { ...form, diameterMm: 40.6 } });
    expect(faults).toEqual(["/form/grooveDepthMm"]);
  });
});

// Common practice: a flush-trim bit that was sharpened leaves a step, until a bearing of its new size is fitted.
describe("a flush-trim bit that was sharpened", () => {
  const bit: Bit = {
    form: { kind: "flush-trim", diameterMm: 19, cuttingLengthMm: 32, bearing: "tip" },
    shankDiameterMm: 12.7,
    wings: 2,
  };
  const trim = (each: Bit) => planOf(each, { kind: "trim", overhangMm: 1.5, thicknessMm: 19, edges: EDGES });

  it("says that it no longer cuts flush", () => {
    const ground = sharpened(bit, { diameterMm: 18.6 });
    expect(formPilotRadiusMm(ground.form)).toBe(9.5);
    expect(() => trim(ground)).toThrow(/cut-does-not-suit-bit/);
    expect(trim(bit).verdict).not.toBe("do-not-run");
  });

  it("cuts flush again on a bearing of its new size", () => {
    const form = { ...bit.form, diameterMm: 18.6, pilotDiameterMm: 18.6 };
    expect(trim(sharpened(bit, { form })).verdict).not.toBe("do-not-run");
  });
});

describe("how many are left", () => {
  const policy = { sharpeningLossAssumedMm: 0.3 };

  it("never takes the bit under its smallest diameter, and one more would", () => {
    fc.assert(
      fc.property(
        number(5, 80),
        number(2, 80),
        fc.array(number(-0.1, 2), { maxLength: 5 }),
        (diameterMm, smallestDiameterMm, losses) => {
          const past = losses.map((lossMm) => ({ beforeMm: 20, afterMm: 20 - lossMm }));
          const { left, lossMm } = sharpeningsLeft({ diameterMm, smallestDiameterMm, past }, policy);
          expect(left).toBeGreaterThanOrEqual(0);
          expect(Number.isInteger(left)).toBe(true);
          if (left > 0) expect(diameterMm - left * lossMm).toBeGreaterThanOrEqual(smallestDiameterMm - 1e-6);
          expect(diameterMm - (left + 1) * lossMm).toBeLessThan(smallestDiameterMm + 1e-6);
        },
      ),
      RUNS,
    );
  });
});

/** Every bearing of a bit: where it sits and how wide it is, mm. */
function bearingsOf({ form }: Bit) {
  return formOutline(form).flatMap((segment) =>
    segment.role === "pilot" && segment.kind === "line"
      ? [[segment.fromMm, segment.toMm, segment.startRadiusMm].map((mm) => mm.toFixed(6))]
      : [],
  );
}

function outcome(bit: Bit, sharpening: Sharpening): Bit | string[] {
  try {
    return sharpened(bit, sharpening);
  } catch (error) {
    if (error instanceof DomainError) return error.faults.map(({ pointer }) => pointer);
    throw error;
  }
}
