import type { Rule } from "../rule.ts";

/**
 * How long edges stay sharp: metres cut in solid wood of middling density by hand. Judgement, nothing measured; a bit's own
 * history takes their place as soon as there is one.
 */
export const WEAR_RULES = {
  edgeLifeHighSpeedSteelM: {
    default: 80,
    unit: "m",
    stricter: "lower",
    min: 1,
    max: 80,
    meaning: "Edge life taken for high-speed steel.",
    source: "ours",
    reason: "Steel is the keenest edge and the first to go: about a tenth of a carbide tip's.",
  },
  edgeLifeCarbideTippedM: {
    default: 800,
    unit: "m",
    stricter: "lower",
    min: 1,
    max: 800,
    meaning: "Edge life taken for brazed carbide tips.",
    source: "ours",
    reason:
      "Some weeks of daily use at the table; early rather than late, because a dull edge burns and pulls.",
  },
  edgeLifeSolidCarbideM: {
    default: 1000,
    unit: "m",
    stricter: "lower",
    min: 1,
    max: 1000,
    meaning: "Edge life taken for solid carbide.",
    source: "ours",
    reason: "Finer grades than brazed tips, and little more is claimed for them here.",
  },
  edgeLifeDiamondM: {
    default: 8000,
    unit: "m",
    stricter: "lower",
    min: 1,
    max: 8000,
    meaning: "Edge life taken for diamond tips.",
    source: "ours",
    reason: "Ten times a carbide tip's: the low end of what the trade expects of it (from memory).",
  },
  edgeLifeDueRatio: {
    default: 0.8,
    unit: "ratio",
    stricter: "lower",
    min: 0.1,
    max: 0.8,
    meaning: "Share of its expected edge life at which a bit is due for sharpening.",
    source: "ours",
    reason: "Before it is dull: a dull edge needs more force, and costs more metal to sharpen.",
  },
} as const satisfies Readonly<Record<string, Rule>>;
