import { describe, expect, it } from "vitest";
import type { BitSolid } from "../bit/solid.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { mountingFor } from "./mounting.ts";

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
  headInertiaKgM2: 1e-7,
};

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

  it("what sits in the shank, which the collet holds, does not count toward tilting", () => {
    const couple = (solid: Partial<BitSolid>) =>
      mountingFor({ ...LIGHT, ...solid }, 12_000, DEFAULT_POLICY).reasons.find(
        ({ code }) => code === "gyroscopic-couple",
      )?.value;
    expect(couple({ polarInertiaKgM2: 5e-7 })).toBe(couple({}));
    expect(couple({ headInertiaKgM2: 2e-7 })).toBeCloseTo(2 * (couple({}) ?? 0), 12);
  });

  it("the couple given is that of a tilt at 1 rad/s: I·ω, 0.3104 N·m for 0.25 kg of 44.45 mm at 12 000 rpm", () => {
    const headInertiaKgM2 = 0.5 * 0.25 * 0.04445 ** 2;
    const { reasons } = mountingFor({ ...LIGHT, headInertiaKgM2 }, 12_000, DEFAULT_POLICY);
    const couple = reasons.find(({ code }) => code === "gyroscopic-couple");
    expect(couple?.value).toBeCloseTo(0.310_358_33, 8);
  });
});
