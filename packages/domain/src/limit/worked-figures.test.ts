import { describe, expect, it } from "vitest";
import { bitSolid } from "../bit/solid.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { bodyStress } from "./body-stress.ts";
import { criticalSpeed } from "./critical-speed.ts";
import { chartRpm } from "./diameter-chart.ts";
import type { LimitContext } from "./limit.ts";
import { shankStress } from "./shank-stress.ts";
import { tipRetention } from "./tip-retention.ts";
import { unbalance } from "./unbalance.ts";

const context = (shankDiameterMm: number): LimitContext => {
  const bit = {
    form: { kind: "straight" as const, diameterMm: 19.05, cuttingLengthMm: 25.4 },
    shankDiameterMm,
    wings: 2,
  };
  return {
    bit,
    solid: bitSolid(bit),
    router: { minRpm: 10_000, maxRpm: 22_000 },
    policy: DEFAULT_POLICY,
    trials: [],
    massHighG: 100,
    headMassHighG: 50,
    runOutMm: 0.05,
    overhangMm: 30,
  };
};

/** 50 g at 30 mm of 12.7 mm ring at 227 495 rpm in a rigid clamp (references §3), at half of it in a collet. */
const CRITICAL_RPM = 227_495 / 2;

/** The pull m·e·ω²/(1 − r²) of a swinging shaft reaches a force where 1/n² = 1/n₀² + 1/n_critical² (Jeffcott rotor, standard). */
const withSwing = (stiffRpm: number) => 1 / Math.hypot(1 / stiffRpm, 1 / CRITICAL_RPM);

describe("the bands of the trade's chart (common practice)", () => {
  it.each([
    [25.4, 24000],
    [25.5, 18_000],
    [50.8, 18000],
    [50.9, 16_000],
    [63.5, 16000],
    [63.6, 12_000],
    [90, 12_000],
  ])("%f mm: %i rpm", (diameterMm, rpm) => {
    expect(chartRpm(diameterMm)).toBe(rpm);
  });

  it("beyond 90 mm the rim keeps the speed it has there: half the speed at twice the diameter", () => {
    expect(chartRpm(180)).toBeCloseTo(6000, 9);
    expect(chartRpm(90.5)).toBeCloseTo((12_000 * 90) / 90.5, 9);
  });
});

describe("a thicker shank", () => {
  it("four times the critical speed with 1/2 in for 1/4 in (references §3: a cantilever goes by d²)", () => {
    expect(criticalSpeed.raisedBy(context(6.35))).toEqual({
      code: "thicker-shank",
      shankDiameterMm: 12.7,
      factor: 4,
    });
  });

  it("is not advised to who has 1/2 in already", () => {
    expect(criticalSpeed.raisedBy(context(12.7))).toEqual({ code: "less-stick-out" });
  });
});

describe("the stress of the body", () => {
  it("reaches 100 MPa when 7850·v²·3.3/4 does (references §3): v = 124.2620 m/s, 124578.9 rpm at 19.05 mm", () => {
    expect(bodyStress.find(context(12.7))?.rpm).toBeCloseTo(124_578.93, 1);
  });
});

describe("the stress of the shank", () => {
  it("leaves unbalance 40 MPa: 268.133 N at 30 mm of 12.7 mm, reached by 100 g at 25 µm at 98895.4 rpm if the shank were stiff", () => {
    expect(shankStress.find(context(12.7))?.rpm).toBeCloseTo(withSwing(98_895.44), 0);
  });
});

describe("the pull on a tip", () => {
  it("of 2 g at 9.525 mm reaches 1000 N at √(1000/(0.002·0.009525)) rad/s, 69186.9 rpm", () => {
    expect(tipRetention.find(context(12.7))?.rpm).toBeCloseTo(69_186.9, 1);
  });
});

describe("the pull of unbalance", () => {
  it("of 100 g at 25 µm reaches 30 N at √(30/(0.1·0.000025)) rad/s, 33079.7 rpm, if the shank were stiff", () => {
    expect(unbalance.find(context(12.7))?.rpm).toBeCloseTo(withSwing(33_079.73), 1);
  });
});
