import { describe, expect, it } from "vitest";
import { RULE_NAMES, type RuleName } from "./policy.ts";
import { RULES } from "./rules.ts";

type Threshold = readonly [value: number, min: number, max: number, stricter: "lower" | "higher"];

// The thresholds as decided: a changed one is a changed decision, and is changed here too.
const DECIDED: Readonly<Record<RuleName, Threshold>> = {
  // common practice
  speedMaxRpm: [27000, 1000, 27000, "lower"],
  rimSpeedMaxMPerS: [56, 5, 80, "lower"],
  // ours
  shookMarginRatio: [0.8, 0.3, 0.8, "lower"],
  dialReadToleranceRatio: [0.02, 0, 0.5, "higher"],
  dialBetweenToleranceRatio: [0.05, 0, 0.5, "higher"],
  dialRangeToleranceRatio: [0.1, 0, 0.5, "higher"],
  massEstimateToleranceRatio: [0.3, 0.3, 1, "higher"],
  handheldDiameterMaxMm: [38.1, 3, 38.1, "lower"],
  // common practice
  handheldCareDiameterMaxMm: [63.5, 3, 63.5, "lower"],
  // ours
  handheldMassMaxG: [100, 10, 100, "lower"],
  handheldCareMassMaxG: [170, 10, 170, "lower"],
  handheldEnergyMaxJ: [40, 1, 40, "lower"],
  handheldCareEnergyMaxJ: [80, 1, 80, "lower"],
  gyroscopicCoupleMaxNm: [0.05, 0.001, 0.05, "lower"],
  gyroscopicCoupleCareMaxNm: [0.1, 0.001, 0.1, "lower"],
  feedPerToothMm: [0.1, 0.02, 0.1, "lower"],
  feedPerToothMinMm: [0.04, 0.04, 0.1, "higher"],
  handFeedMaxMPerMin: [6, 0.3, 6, "lower"],
  chipMeanMinMm: [0.005, 0.005, 0.05, "higher"],
  // common practice
  climbBiteMaxMm: [0.8, 0, 0.8, "lower"],
  finishBiteMm: [0.8, 0.1, 0.8, "lower"],
  // ours
  passSectionMaxMm2: [150, 2, 150, "lower"],
  handheldPassSectionMaxMm2: [80, 2, 80, "lower"],
  passWidthTimesBiteMaxMm2: [200, 4, 200, "lower"],
  handheldPassWidthTimesBiteMaxMm2: [110, 4, 110, "lower"],
  // common practice
  grooveDepthPerDiameterMaxRatio: [0.5, 0.05, 0.5, "lower"],
  // ours
  cutForceMaxN: [150, 5, 150, "lower"],
  handheldCutForceMaxN: [80, 5, 80, "lower"],
  motorEfficiencyRatio: [0.6, 0.2, 0.6, "lower"],
  inputPowerAssumedW: [800, 200, 800, "lower"],
  runOutAssumedMm: [0.05, 0.05, 0.5, "higher"],
  unbalanceForceMaxN: [30, 1, 30, "lower"],
  balanceGradeMaxMmPerS: [100, 2.5, 100, "lower"],
  stickOutAssumedMm: [10, 0, 60, "higher"],
  clampFactorRatio: [0.5, 0.1, 0.5, "lower"],
  criticalSpeedShareMaxRatio: [0.7, 0.1, 0.7, "lower"],
  shankStressMaxMPa: [200, 20, 200, "lower"],
  shankStressCuttingShareRatio: [0.8, 0.2, 0.8, "lower"],
  bodyStressMaxMPa: [100, 5, 100, "lower"],
  tipMassAssumedG: [2, 0.1, 20, "higher"],
  tipForceMaxN: [1000, 50, 1000, "lower"],
  // common practice
  panelClearanceMinMm: [0.8, 0.8, 10, "higher"],
  panelEngagementMinMm: [3, 3, 20, "higher"],
  // ours
  moistureToleranceAssumedPercent: [1, 1, 10, "higher"],
  movementSpreadRatio: [0.15, 0.15, 1, "higher"],
  tonguePlayMinMm: [0.1, 0.1, 2, "higher"],
  tonguePlayMaxMm: [0.8, 0.2, 0.8, "lower"],
  setUpSeconds: [180, 30, 3600, "higher"],
  trialStepRatio: [1.25, 1.05, 1.25, "lower"],
  vibrationFreeMaxMmPerS: [1.8, 0.3, 1.8, "lower"],
  dialReadingMaxAgeDays: [365, 1, 365, "lower"],
  runOutReadingMaxAgeDays: [365, 1, 365, "lower"],
  inspectionIntervalDays: [180, 1, 180, "lower"],
  inspectionIntervalM: [500, 1, 500, "lower"],
  sharpeningLossAssumedMm: [0.3, 0.3, 5, "higher"],
  edgeLifeHighSpeedSteelM: [80, 1, 80, "lower"],
  edgeLifeCarbideTippedM: [800, 1, 800, "lower"],
  edgeLifeSolidCarbideM: [1000, 1, 1000, "lower"],
  edgeLifeDiamondM: [8000, 1, 8000, "lower"],
  edgeLifeDueRatio: [0.8, 0.1, 0.8, "lower"],
};

describe("every threshold", () => {
  it.each(RULE_NAMES)("%s is what was decided", (name) => {
    const { default: value, min, max, stricter } = RULES[name];
    expect([value, min, max, stricter]).toEqual(DECIDED[name]);
  });
});

describe("a threshold that follows from a fact of the trade", () => {
  it("125 mph on the rim is 55.88 m/s exactly (NIST SP 811), told as 56", () => {
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
