import {
  chipOf,
  chipThinningFactor,
  cuttingPowerW,
  feedFor,
  secondsAlong,
  specificCuttingForceNPerMm2,
  WOODS,
  waveHeightMm,
  woodById,
} from "@rimwise/domain";
import { describe, expect, it } from "vitest";

const known = (id: string) => {
  const wood = woodById(id);
  if (wood === undefined) throw new Error(id);
  return wood;
};

describe("feed and tooth marks", () => {
  it("18 000 rpm, two flutes, 0.4 mm a tooth is 14.4 m/min (feed per tooth, standard)", () => {
    expect(feedFor(0.4, 18000, 2, 6, 100).feedMPerMin).toBeCloseTo(14.4, 12);
  });

  // Knife marks to the inch, n·N/(12·fpm): a trade-magazine column by a wood-machining researcher.
  it.each([
    [7200, 30, 40],
    [22000, 15, 244.44444],
    [18000, 10, 300],
    [12000, 8, 250],
  ])(
    "%i rpm, two knives, %i ft/min: every knife cutting leaves %f marks to the inch",
    (rpm, feetPerMin, marks) => {
      const feedMPerMin = feetPerMin * 0.3048;
      const perTooth = (feedMPerMin * 1000) / (rpm * 2);
      expect(25.4 / feedFor(perTooth, rpm, 2, 25, 100).feedPerToothMm).toBeCloseTo(marks, 4);
      // Run-out lets one tooth leave the finish: half as many.
      expect(25.4 / feedFor(perTooth, rpm, 2, 25, 100).toothMarkPitchMm).toBeCloseTo(marks / 2, 4);
    },
  );

  it("a hand has a fastest feed, whatever the speed asks for", () => {
    expect(feedFor(0.1, 30000, 4, 6, 6).feedMPerMin).toBe(6);
    expect(secondsAlong(1000, 6)).toBeCloseTo(10, 12);
  });

  // Exact cusp height R − √(R² − (p/2)²), computed with 30 digits; the approximation p²/8R beside it.
  it.each([
    [1.5, 125, 0.004500162, 0.0045],
    [2, 120, 0.008333912, 0.008333333],
    [1.27, 50.8, 0.007938741, 0.0079375],
    [0.5, 19.05, 0.003281405, 0.00328084],
    [0.4, 12.7, 0.003150388, 0.003149606],
  ])("waves of pitch %f mm under a %f mm cutter are %f mm high", (pitch, diameter, exact, approximate) => {
    expect(waveHeightMm(pitch, diameter / 2) / exact).toBeCloseTo(1, 6);
    expect((pitch * pitch) / (4 * diameter) / approximate).toBeCloseTo(1, 6);
  });
});

describe("the chip of one tooth (circular path, computed with 30 digits for f_z = 1)", () => {
  it.each([
    [0.01, 11.478341, 0.099832859, 0.19899749],
    [0.05, 25.841933, 0.22171631, 0.43588989],
    [0.1, 36.869898, 0.31079978, 0.6],
    [0.25, 60, 0.47746483, 0.8660254],
    [0.5, 90, 0.63661977, 1],
    [1, 180, 0.63661977, 1],
  ])("at immersion %f", (immersion, degrees, mean, greatest) => {
    const chip = chipOf(1, immersion);
    expect((chip.contactRad * 180) / Math.PI).toBeCloseTo(degrees, 5);
    expect(chip.meanMm / mean).toBeCloseTo(1, 7);
    expect(chip.greatestMm / greatest).toBeCloseTo(1, 7);
  });

  it("is not the shop's f·√a, which is 57 % high in a slot", () => {
    expect(Math.sqrt(1) / chipOf(1, 1).meanMm).toBeCloseTo(1.5707963, 7);
  });

  it.each([
    [0.05, 2.2941573],
    [0.1, 1.6666667],
    [0.25, 1.1547005],
    [0.5, 1],
    [1, 1],
  ])("thins at immersion %f, so that %f times the feed keeps its greatest thickness", (immersion, factor) => {
    expect(chipThinningFactor(immersion)).toBeCloseTo(factor, 7);
  });
});

describe("power and force", () => {
  // P = k·a_e·a_p·v_f/60 000. k from Materials 14:2208 (2021), particleboard, slow and fast peripheral milling.
  it.each([
    [32.0, 12.7 * 19.05, 4, 516.128],
    [37.6, 12.7 * 19.05, 4, 606.4504],
    [20, 3 * 12, 3, 36],
  ])("k %f N/mm² on %f mm² at %f m/min is %f W", (specific, section, feed, watts) => {
    expect(cuttingPowerW(specific, section, feed)).toBeCloseTo(watts, 3);
  });

  it("gives particleboard the measured mean force at its reference chip", () => {
    expect(specificCuttingForceNPerMm2(known("particleboard"), 0.1, "long")).toBeCloseTo(32, 6);
  });

  // Absolute values for solid wood are weakly published; only the shape is held.
  it("rises with density, falls as the chip thickens, and is greater in end grain", () => {
    const byDensity = [...WOODS].sort((a, b) => a.densityKgPerM3.value - b.densityKgPerM3.value);
    const forces = byDensity.map((wood) => specificCuttingForceNPerMm2(wood, 0.05, "long"));
    expect(forces).toEqual([...forces].sort((a, b) => a - b));
    const cherry = known("black-cherry");
    const byChip = [0.01, 0.02, 0.05, 0.1, 0.2].map((chip) =>
      specificCuttingForceNPerMm2(cherry, chip, "long"),
    );
    expect(byChip).toEqual([...byChip].sort((a, b) => b - a));
    expect(specificCuttingForceNPerMm2(cherry, 0.05, "end")).toBeGreaterThan(byChip[2] ?? Number.NaN);
  });
});
