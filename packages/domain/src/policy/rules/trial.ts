import type { Rule } from "../rule.ts";

/** How a bit is tried out, and what counts as running free. */
export const TRIAL_RULES = {
  trialStepRatio: {
    default: 1.25,
    unit: "ratio",
    stricter: "lower",
    min: 1.05,
    max: 1.25,
    meaning:
      "Greatest step of a guided trial: the next speed as a multiple of the fastest that ran free so far.",
    source: "ours",
    reason: "The pull of unbalance grows with the square of the speed: by a little over half in one step.",
  },
  vibrationFreeMaxMmPerS: {
    default: 1.8,
    unit: "mm/s",
    stricter: "lower",
    min: 0.3,
    max: 1.8,
    meaning: "Housing vibration velocity, r.m.s., at or under which a measured trial counts as ran free.",
    source: "ours",
    reason:
      "No published figure for routers is known here. ISO 10816-1 stops calling small machines fit for long use there (from memory); it is about half of what the greatest unbalance force allowed would give a free router of 5 kg.",
  },
} as const satisfies Readonly<Record<string, Rule>>;
