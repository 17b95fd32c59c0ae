import { describe, expect, it } from "vitest";
import type { BitSolid } from "../bit/solid.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { hasColletFor, shankFaults } from "./collet.ts";
import { dialSpeeds } from "./dial.ts";
import { mountingFor } from "./mounting.ts";
import { ROUTER_RANGES, type Router } from "./router.ts";

const ROUTER: Router = { minRpm: 10_000, maxRpm: 24_000, colletDiametersMm: [12.7] };

const LIGHT: BitSolid = {
  outline: [],
  rimRadiusMm: 10,
  massG: 10,
  massSource: "weighed",
  estimatedMassG: 10,
  centreOfMassMm: 10,
  headMassG: 5,
  headCentreMm: 10,
  polarInertiaKgM2: 1e-7,
};

const marksOf = (last: number) =>
  dialSpeeds({ ...ROUTER, dial: { marks: { first: 1, last }, steps: 0 } }, DEFAULT_POLICY).length;

describe("what a router's fields may be", () => {
  it("is what was decided (ours)", () => {
    expect(ROUTER_RANGES).toEqual({
      rpm: { min: 1000, max: 60_000 },
      inputPowerW: { min: 50, max: 10_000 },
      colletDiametersMm: { min: 3, max: 20 },
      mark: { min: 0, max: 100 },
      steps: { min: 0, max: 20 },
    });
  });
});

describe("a collet", () => {
  it("closes on a shank a tenth of a millimetre off, not on 12 mm in 1/2 in", () => {
    expect(hasColletFor(12.6005, ROUTER)).toBe(true);
    expect(hasColletFor(12.5995, ROUTER)).toBe(false);
    expect(hasColletFor(12, ROUTER)).toBe(false);
  });

  it("takes nothing thicker by more than that", () => {
    expect(shankFaults(12.7995, ROUTER)).toEqual([]);
    expect(shankFaults(12.8005, ROUTER)).toMatchObject([{ code: "shank-too-thick" }]);
  });
});

describe("a stepless dial", () => {
  it("is set to tenths of a mark while it has twenty or less between its ends", () => {
    expect(marksOf(6)).toBe(51);
    expect(marksOf(21)).toBe(201);
  });

  it("is set to whole marks beyond that", () => {
    expect(marksOf(21.1)).toBe(21);
  });
});

describe("what may be held in two hands", () => {
  const clearance = (solid: Partial<BitSolid>) =>
    mountingFor({ ...LIGHT, ...solid }, 12_000, DEFAULT_POLICY).allowed;

  it.each([
    [38.1, "handheld"],
    [38.2, "handheld-with-care"],
    [63.5, "handheld-with-care"],
    [63.6, "table-only"],
  ])("%f mm across: %s (1-1/2 in and 2-1/2 in)", (diameterMm, allowed) => {
    expect(clearance({ rimRadiusMm: diameterMm / 2 })).toBe(allowed);
  });

  it.each([
    [100, "handheld"],
    [100.1, "handheld-with-care"],
    [170, "handheld-with-care"],
    [170.1, "table-only"],
  ])("%f g: %s", (massG, allowed) => {
    expect(clearance({ massG })).toBe(allowed);
  });

  it("the couple told is that of a tilt at 1 rad/s: I·ω, 0.3104 N·m for 0.25 kg of 44.45 mm at 12 000 rpm", () => {
    const polarInertiaKgM2 = 0.5 * 0.25 * 0.04445 ** 2;
    const { reasons } = mountingFor({ ...LIGHT, polarInertiaKgM2 }, 12_000, DEFAULT_POLICY);
    const couple = reasons.find(({ code }) => code === "gyroscopic-couple");
    expect(couple?.value).toBeCloseTo(0.310_358_33, 8);
  });
});
