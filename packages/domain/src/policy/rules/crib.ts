import type { Rule } from "../rule.ts";

/** What people who are not in charge may do with the shared rack by themselves. */
export const CRIB_RULES = {
  loanTermMaxDays: {
    default: 90,
    unit: "days",
    stricter: "lower",
    min: 1,
    max: 90,
    meaning: "Longest time that a bit is lent for.",
    source: "ours",
    reason: "A term of lessons; what is needed longer is lent again after somebody has looked at it.",
  },
  loggedUseMaxAgeDays: {
    default: 28,
    unit: "days",
    stricter: "lower",
    min: 1,
    max: 28,
    meaning: "How long ago work may have been done that somebody who is not in charge logs.",
    source: "ours",
    reason: "Four weeks: what is older nobody remembers well enough for an edge to be judged by it.",
  },
  loggedFeedMaxMPerMin: {
    default: 12,
    unit: "m/min",
    stricter: "lower",
    min: 6,
    max: 12,
    meaning: "Greatest length cut in a minute that is taken for work by hand.",
    source: "ours",
    reason: "Twice the fastest feed by hand that a plan gives: times are noted roughly.",
  },
  holdsPerDayMax: {
    default: 5,
    unit: "holds a day",
    stricter: "lower",
    min: 1,
    max: 5,
    meaning: "How often in 24 hours one person who is not in charge may take bits out of use.",
    source: "ours",
    reason: "Whoever finds more in doubt than that calls somebody in charge, who may hold any number.",
  },
} as const satisfies Readonly<Record<string, Rule>>;
