import type { Rule } from "../rule.ts";

/** Speed of the rim and the spindle. */
export const SPEED_RULES = {
  speedMaxRpm: {
    default: 27000,
    unit: "rpm",
    stricter: "lower",
    min: 1000,
    max: 27000,
    meaning: "Fastest speed any bit may be run at.",
    source: "common practice",
    reason: "Router motors run up to 27 000 rpm (NAVEDTRA 14043); nothing here is meant to go beyond them.",
  },
  rimSpeedMaxMPerS: {
    default: 56,
    unit: "m/s",
    stricter: "lower",
    min: 5,
    max: 80,
    meaning: "Fastest speed of the rim.",
    source: "common practice",
    reason: "About 125 mph: what a 3-1/2 in bit reaches at 12 000 rpm, the speed the trade gives it.",
  },
  shookMarginRatio: {
    default: 0.8,
    unit: "ratio",
    stricter: "lower",
    min: 0.3,
    max: 0.8,
    meaning: "Speed allowed, as a share of the slowest at which the bit shook, if no slower trial ran free.",
    source: "ours",
    reason: "One step of a guided trial.",
  },
} as const satisfies Readonly<Record<string, Rule>>;
