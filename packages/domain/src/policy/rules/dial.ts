import type { Rule } from "../rule.ts";

/** How far a dial may be off. */
export const DIAL_RULES = {
  dialReadToleranceRatio: {
    default: 0.02,
    unit: "ratio",
    stricter: "higher",
    min: 0,
    max: 0.5,
    meaning: "How far the true speed may be above a tachometer reading at that mark.",
    source: "ours",
    reason: "An optical tachometer is good to a fraction of a percent; setting the same mark again is not.",
  },
  dialBetweenToleranceRatio: {
    default: 0.05,
    unit: "ratio",
    stricter: "higher",
    min: 0,
    max: 0.5,
    meaning: "The same between two readings; there the speed is interpolated.",
    source: "ours",
    reason: "A dial need not be even between two marks.",
  },
  dialRangeToleranceRatio: {
    default: 0.1,
    unit: "ratio",
    stricter: "higher",
    min: 0,
    max: 0.5,
    meaning: "The same if only the router's speed range is known.",
    source: "ours",
    reason:
      "Rated no-load speeds are commonly allowed to be 10 % out (from memory), and dials are rarely even.",
  },
} as const satisfies Readonly<Record<string, Rule>>;
