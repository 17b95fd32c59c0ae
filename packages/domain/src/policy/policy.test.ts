import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY, policyFaults, RULE_NAMES, strictestPolicy } from "./policy.ts";
import { RULES } from "./rules.ts";

describe("the policy", () => {
  it("has for every rule a default inside its range, a unit, a reason and a source", () => {
    for (const name of RULE_NAMES) {
      const rule = RULES[name];
      expect(DEFAULT_POLICY[name], name).toBe(rule.default);
      expect(rule.default, name).toBeGreaterThanOrEqual(rule.min);
      expect(rule.default, name).toBeLessThanOrEqual(rule.max);
      expect(rule.meaning, name).toMatch(/\.$/);
      expect(rule.reason, name).toMatch(/\.$/);
      expect(["standard", "common practice", "ours"], name).toContain(rule.source);
    }
  });

  it("takes the strictest of every layer, rule by rule, and none can loosen it", () => {
    for (const name of RULE_NAMES) {
      const { min, max, stricter, default: usual } = RULES[name];
      const strict = stricter === "lower" ? min : max;
      const loose = stricter === "lower" ? max : min;
      expect(strictestPolicy({ [name]: strict }, { [name]: loose })[name], name).toBe(strict);
      expect(strictestPolicy({ [name]: loose }, { [name]: strict })[name], name).toBe(strict);
      // The default is a layer too.
      expect(strictestPolicy({ [name]: loose })[name], name).toBe(usual);
    }
  });

  it("refuses thresholds outside their range", () => {
    expect(policyFaults({ rimSpeedMaxMPerS: 56 })).toEqual([]);
    expect(policyFaults({ rimSpeedMaxMPerS: 900 })).toMatchObject([
      { pointer: "/rimSpeedMaxMPerS", code: "out-of-range" },
    ]);
  });
});
