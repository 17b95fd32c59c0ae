import type { LimitFinding, LimitName } from "../../limit/ceiling.ts";
import type { Show } from "../show.ts";

type Sentence = (values: LimitFinding["values"], rpm: string, show: Show) => string;

const BASIS: Readonly<Record<LimitName, Sentence>> = {
  "marked-maximum": (_, rpm) => `The tool is marked for at most ${rpm}.`,
  "rim-speed": ({ diameterMm = Number.NaN, rimSpeedMaxMPerS = Number.NaN }, rpm, show) =>
    `A rim ${show.length(diameterMm)} across reaches ${show.speed(rimSpeedMaxMPerS)} at ${rpm}.`,
  policy: (_, rpm) => `The policy in force allows at most ${rpm}.`,
  "diameter-chart": ({ diameterMm = Number.NaN }, rpm, show) =>
    `The trade's chart gives a bit ${show.length(diameterMm)} across at most ${rpm}.`,
  router: (_, rpm) => `The router turns no faster than ${rpm}.`,
};

const TITLES: Readonly<Record<LimitName, string>> = {
  "marked-maximum": "the marking on the tool",
  "rim-speed": "the rim speed",
  policy: "the policy in force",
  "diameter-chart": "the chart by diameter",
  router: "the router's top speed",
};

/** Where a limit's figure comes from, as one sentence. */
export function describeLimit({ name, rpm, values }: LimitFinding, show: Show): string {
  return BASIS[name](values, show.rotation(rpm), show);
}

/** What to call a limit in the middle of a sentence. */
export function limitTitle(name: LimitName): string {
  return TITLES[name];
}
