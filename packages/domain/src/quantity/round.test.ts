import { describe, expect, it } from "vitest";
import { DomainError } from "./fault.ts";
import { floorTo, roundTo } from "./round.ts";

describe("cutting down to decimals", () => {
  it.each([
    [0.3, 1, 0.3],
    [0.1 + 0.2, 1, 0.3],
    [0.29, 2, 0.29],
    [124.96, 1, 124.9],
    [11999.999, 0, 11999],
    [12849, -2, 12800],
    [-1.25, 1, -1.3],
    [1e-7, 3, 0],
    [1.5e-7, 7, 1e-7],
    [5, 2, 5],
  ])("takes %d to %d decimals as %d", (value, decimals, want) => {
    expect(floorTo(value, decimals)).toBe(want);
  });

  it("never gives a negative nought", () => {
    expect(Object.is(floorTo(-0, 1), 0)).toBe(true);
    expect(Object.is(roundTo(-0.01, 1), 0)).toBe(true);
  });
});

describe("rounding to decimals", () => {
  it.each([
    [1.005, 2, 1.01],
    [2.5, 0, 3],
    [-2.5, 0, -3],
    [0.04999, 1, 0],
    [1e-7, 3, 0],
    [12850, -2, 12900],
  ])("takes %d to %d decimals as %d", (value, decimals, want) => {
    expect(roundTo(value, decimals)).toBe(want);
  });
});

it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses %d", (value) => {
  expect(() => floorTo(value, 0)).toThrow(DomainError);
  expect(() => roundTo(value, 0)).toThrow(DomainError);
});
