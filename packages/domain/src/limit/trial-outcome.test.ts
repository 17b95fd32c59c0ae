import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY, strictestPolicy } from "../policy/policy.ts";
import { trialOutcome, VIBRATION_RANGE } from "./trial-outcome.ts";

describe("a measured trial", () => {
  it("ran free at or under the policy's vibration, and shook above it", () => {
    expect(trialOutcome(0, DEFAULT_POLICY)).toBe("ran-free");
    expect(trialOutcome(1.8, DEFAULT_POLICY)).toBe("ran-free");
    expect(trialOutcome(1.801, DEFAULT_POLICY)).toBe("shook");
    expect(trialOutcome(1.2, strictestPolicy({ vibrationFreeMaxMmPerS: 1 }))).toBe("shook");
  });

  it.each([Number.NaN, -0.1, 1001, Number.POSITIVE_INFINITY])("%s is no vibration", (value) => {
    expect(() => trialOutcome(value, DEFAULT_POLICY)).toThrow("/vibrationMmPerS");
    expect(VIBRATION_RANGE).toEqual({ min: 0, max: 1000 });
  });
});
