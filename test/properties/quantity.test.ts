import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  parseLength,
  parseMass,
  parseRotation,
  parseSpeed,
} from "../../packages/domain/src/quantity/parse.ts";
import { floorTo, roundTo } from "../../packages/domain/src/quantity/round.ts";
import { showLength, showMass, showRotation, showSpeed } from "../../packages/domain/src/quantity/show.ts";
import { G_PER_OUNCE, M_PER_S_PER_MPH } from "../../packages/domain/src/quantity/units.ts";

const size = (max: number) => fc.double({ min: 0, max, noNaN: true });
const systems = fc.constantFrom("imperial", "metric");

describe("what is shown reads back", () => {
  it("as the same length to 0.05 mm", () => {
    fc.assert(
      fc.property(size(5000), systems, (mm, units) => {
        const back = parseLength(showLength(mm, units));
        expect(back.ok && Math.abs(back.mm - mm)).toBeLessThan(0.0501);
      }),
    );
  });

  it("as exactly the same mark of a rule", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 64 * 48 }), (marks) => {
        const mm = (marks * 25.4) / 64;
        const back = parseLength(showLength(mm, "imperial"));
        expect(back.ok && back.mm).toBeCloseTo(mm, 9);
      }),
    );
  });

  it("as the same mass to half a tenth of its unit", () => {
    fc.assert(
      fc.property(size(5000), systems, (g, units) => {
        const back = parseMass(showMass(g, units));
        const slackG = units === "metric" ? 0.0501 : 0.0501 * G_PER_OUNCE;
        expect(back.ok && Math.abs(back.g - g)).toBeLessThan(slackG);
      }),
    );
  });

  it("as a speed no faster, and at most a tenth of its unit slower", () => {
    fc.assert(
      fc.property(size(200), systems, (mPerS, units) => {
        const back = parseSpeed(showSpeed(mPerS, units));
        const slower = back.ok ? mPerS - back.mPerS : Number.NaN;
        expect(slower).toBeGreaterThan(-1e-9);
        expect(slower).toBeLessThan(0.1001 * (units === "metric" ? 1 : M_PER_S_PER_MPH));
      }),
    );
  });

  it("as a rotation no faster, and less than a turn slower", () => {
    fc.assert(
      fc.property(size(60_000), (rpm) => {
        const back = parseRotation(showRotation(rpm));
        expect(back).toEqual({ ok: true, rpm: Math.floor(rpm) });
      }),
    );
  });
});

it("no text whatever makes a reader throw, or give a number that is negative or not finite", () => {
  const pieces = fc.constantFrom(
    ..."0123456789.,-/+ e'\"½″".split(""),
    "in",
    "mm",
    "ft",
    "oz",
    "lb",
    "rpm",
    "mph",
    "m/s",
  );
  const texts = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.array(pieces, { maxLength: 12 }).map((all) => all.join("")),
  );
  fc.assert(
    fc.property(texts, (text) => {
      for (const parsed of [parseLength(text), parseMass(text), parseSpeed(text), parseRotation(text)]) {
        if (!parsed.ok) continue;
        const { ok, ...quantity } = parsed;
        for (const value of Object.values(quantity)) {
          expect(Number.isFinite(value)).toBe(true);
          expect(value).toBeGreaterThanOrEqual(0);
        }
      }
    }),
    { numRuns: 2000 },
  );
});

describe("rounding", () => {
  const values = fc.double({ min: -1e9, max: 1e9, noNaN: true });
  const decimals = fc.integer({ min: -3, max: 6 });

  it("down is never above the value, and within one step of it", () => {
    fc.assert(
      fc.property(values, decimals, (value, places) => {
        const floored = floorTo(value, places);
        expect(floored).toBeLessThanOrEqual(value);
        expect(value - floored).toBeLessThanOrEqual(10 ** -places * (1 + 1e-6) + 1e-6);
      }),
    );
  });

  it("either way leaves alone what is already round", () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), decimals, (steps, places) => {
        const round = Number(`${steps}e${-places}`);
        expect(floorTo(round, places)).toBe(round === 0 ? 0 : round);
        expect(roundTo(round, places)).toBe(round === 0 ? 0 : round);
      }),
    );
  });
});
