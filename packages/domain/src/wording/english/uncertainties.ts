import type { UncertaintyCost } from "../../plan/uncertainty.ts";
import type { Show } from "../show.ts";

const SENTENCES: Readonly<Record<UncertaintyCost["code"], (gain: string) => string>> = {
  dial: (gain) => `Measure the dial with a tachometer: up to ${gain} more may be allowed.`,
  mass: (gain) => `Weigh the bit: up to ${gain} more may be allowed.`,
  "run-out": (gain) => `Measure the run-out in the collet: up to ${gain} more may be allowed.`,
};

/**
 * What not knowing one thing costs, and how to know it, as a sentence.
 * @example
 * describeUncertainty({ code: "mass", gainRpm: 2000 }, showIn("metric")) // → "Weigh the bit: up to 2,000 rpm more may be allowed."
 */
export function describeUncertainty({ code, gainRpm }: UncertaintyCost, show: Show): string {
  return SENTENCES[code](show.rotation(gainRpm));
}
