import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EMC_RANGES, equilibriumMoisturePercent } from "../../packages/domain/src/wood/emc.ts";
import { movementMm } from "../../packages/domain/src/wood/movement.ts";
import { SPECIES } from "../../packages/domain/src/wood/registry.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const temperature = between(EMC_RANGES.temperatureC.min, EMC_RANGES.temperatureC.max);
const humidity = between(0, 100);
// In tenths of a percent: finer than any meter reads, coarse enough that no difference vanishes.
const moisture = fc.integer({ min: 0, max: 300 }).map((tenths) => tenths / 10);
const board = fc.record({
  species: fc.constantFrom(...SPECIES),
  direction: fc.constantFrom("radial", "tangential"),
  sizeMm: between(1, 1000),
});

describe("equilibrium moisture content", () => {
  it("is finite and not negative wherever the table reaches", () => {
    fc.assert(
      fc.property(temperature, humidity, (t, h) => {
        const percent = equilibriumMoisturePercent(t, h);
        expect(Number.isFinite(percent)).toBe(true);
        expect(percent).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("rises with humidity", () => {
    fc.assert(
      fc.property(temperature, humidity, between(0.01, 10), (t, h, more) => {
        fc.pre(h + more <= 100);
        expect(equilibriumMoisturePercent(t, h + more)).toBeGreaterThan(equilibriumMoisturePercent(t, h));
      }),
    );
  });

  // Warmer air of the same relative humidity dries wood (Wood Handbook Table 4-2, every row above 30 °F).
  it("falls with temperature in a shop", () => {
    fc.assert(
      fc.property(between(5, 45), between(5, 95), between(0.1, 5), (t, h, warmer) => {
        expect(equilibriumMoisturePercent(t + warmer, h)).toBeLessThan(equilibriumMoisturePercent(t, h));
      }),
    );
  });
});

describe("movement", () => {
  it("is a swelling when moisture is gained and a shrinking when it is lost", () => {
    fc.assert(
      fc.property(board, moisture, moisture, ({ species, direction, sizeMm }, from, to) => {
        const mm = movementMm(species, direction, {
          sizeMm,
          fromMoisturePercent: from,
          toMoisturePercent: to,
        });
        expect(Math.sign(mm)).toBe(Math.sign(to - from));
      }),
    );
  });

  it("grows in proportion to the board", () => {
    fc.assert(
      fc.property(
        board,
        moisture,
        moisture,
        between(1, 5),
        ({ species, direction, sizeMm }, from, to, times) => {
          const change = { fromMoisturePercent: from, toMoisturePercent: to };
          const one = movementMm(species, direction, { ...change, sizeMm });
          const many = movementMm(species, direction, { ...change, sizeMm: sizeMm * times });
          expect(many).toBeCloseTo(one * times, 6);
        },
      ),
    );
  });

  it("is larger in a flatsawn board than in a quartersawn one", () => {
    fc.assert(
      fc.property(board, between(6, 9), between(10, 14), ({ species, sizeMm }, from, to) => {
        const change = { sizeMm, fromMoisturePercent: from, toMoisturePercent: to };
        expect(movementMm(species, "tangential", change)).toBeGreaterThan(
          movementMm(species, "radial", change),
        );
      }),
    );
  });

  // Eq. (13-2) and (13-3) are the same at 10 %, so on either side of the even range they may not be far apart.
  it("does not jump where one equation takes over from the other", () => {
    fc.assert(
      fc.property(board, ({ species, direction, sizeMm }) => {
        const inside = movementMm(species, direction, {
          sizeMm,
          fromMoisturePercent: 10,
          toMoisturePercent: 14,
        });
        const outside = movementMm(species, direction, {
          sizeMm,
          fromMoisturePercent: 10,
          toMoisturePercent: 14.001,
        });
        expect(Math.abs(outside - inside) / inside).toBeLessThan(0.01);
      }),
    );
  });
});
