import type { Rule } from "../rule.ts";

/** How long the work of a job takes beside the cut itself. */
export const JOB_RULES = {
  handlingSecondsPerPiece: {
    default: 15,
    unit: "s",
    stricter: "higher",
    min: 2,
    max: 600,
    meaning: "Time to fetch a piece, lay it on, take it off and put it down, each time it is run.",
    source: "ours",
    reason: "Parts stacked within reach; a class, or work that must be clamped, takes longer.",
  },
  jobTimeSpreadRatio: {
    default: 0.3,
    unit: "ratio",
    stricter: "higher",
    min: 0.1,
    max: 1,
    meaning: "How much less or more than computed the work of a job may take.",
    source: "ours",
    reason: "Judgement, nothing measured: no two hands feed and fetch alike.",
  },
} as const satisfies Readonly<Record<string, Rule>>;
