import {
  type Bit,
  bitFaults,
  bitSolid,
  DomainError,
  FORMS,
  formDiameterMm,
  type Sharpening,
  sharpened,
  sharpeningsLeft,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
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

function outcome(bit: Bit, sharpening: Sharpening): Bit | string[] {
  try {
    return sharpened(bit, sharpening);
  } catch (error) {
    if (error instanceof DomainError) return error.faults.map(({ pointer }) => pointer);
    throw error;
  }
}
