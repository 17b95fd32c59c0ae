import { describe, expect, it } from "vitest";
import { RULES } from "./rules.ts";

describe("a threshold that follows from a fact of the trade", () => {
  it("125 mph on the rim is 55.88 m/s exactly (NIST SP 811), rounded to 56", () => {
    expect(RULES.rimSpeedMaxMPerS.default).toBe(Math.round(125 * 0.44704));
  });

  it.each([
    ["climbBiteMaxMm", 1 / 32],
    ["finishBiteMm", 1 / 32],
    ["panelClearanceMinMm", 1 / 32],
    ["tonguePlayMaxMm", 1 / 32],
  ] as const)("%s is 1/32 in to a tenth of a millimetre (common practice)", (name, inches) => {
    expect(RULES[name].default).toBeCloseTo(inches * 25.4, 1);
  });

  it("1-1/2 in and 2-1/2 in are the ends of what is handheld (the second: common practice)", () => {
    expect(RULES.handheldDiameterMaxMm.default).toBeCloseTo(1.5 * 25.4, 9);
    expect(RULES.handheldCareDiameterMaxMm.default).toBeCloseTo(2.5 * 25.4, 9);
  });

  it("no router motor turns faster than 27 000 rpm (NAVEDTRA 14043)", () => {
    expect(RULES.speedMaxRpm.default).toBe(27_000);
  });

  it("one step of a trial up, and the margin under a speed at which the bit shook, are one and the same step", () => {
    expect(RULES.trialStepRatio.default * RULES.shookMarginRatio.default).toBeCloseTo(1, 9);
  });

  it("the unbalance force allowed gives a free router of 5 kg about twice the vibration of running free", () => {
    // v = F / (m·ω) at 12 000 rpm, r.m.s. of a sine.
    const omegaRadPerS = (12_000 * 2 * Math.PI) / 60;
    const rmsMmPerS = (RULES.unbalanceForceMaxN.default / (5 * omegaRadPerS) / Math.SQRT2) * 1000;
    expect(rmsMmPerS / RULES.vibrationFreeMaxMmPerS.default).toBeGreaterThan(1.7);
    expect(rmsMmPerS / RULES.vibrationFreeMaxMmPerS.default).toBeLessThan(2.3);
  });

  it("edges are inspected within the life taken for a carbide tip, and before they are due", () => {
    const { inspectionIntervalM, edgeLifeCarbideTippedM, edgeLifeDueRatio } = RULES;
    expect(inspectionIntervalM.default).toBeLessThan(
      edgeLifeCarbideTippedM.default * edgeLifeDueRatio.default,
    );
  });

  it("a carbide tip 25 by 8 by 0.7 mm at 14.9 g/cm³ weighs about 2 g", () => {
    expect(RULES.tipMassAssumedG.default).toBeCloseTo(2.5 * 0.8 * 0.07 * 14.9, 0);
  });
});
