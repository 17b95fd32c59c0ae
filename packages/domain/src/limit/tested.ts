import { defineLimit } from "./limit.ts";
import type { SpeedTrial } from "./trial.ts";

/** What the trials of one bit in one router say together. */
export type TrialVerdict = {
  /** Slowest speed at which it shook. */
  readonly shookRpm: number | undefined;
  /** Fastest speed at which it ran free, below the slowest that shook. */
  readonly freeRpm: number | undefined;
  /** It once ran free at or above a speed at which it once shook: the safe side is taken. */
  readonly isContradicted: boolean;
};

/**
 * The trials in the same router, summed up on the safe side.
 * @example
 * const trials = [
 *   { rpm: 12_000, outcome: "ran-free", isSameRouter: true },
 *   { rpm: 16_000, outcome: "shook", isSameRouter: true },
 * ];
 * trialVerdict(trials) // → { shookRpm: 16_000, freeRpm: 12_000, isContradicted: false }
 */
export function trialVerdict(trials: readonly SpeedTrial[]): TrialVerdict {
  const here = trials.filter(({ isSameRouter: sameRouter }) => sameRouter);
  const shook = here.filter(({ outcome }) => outcome === "shook").map(({ rpm }) => rpm);
  const free = here.filter(({ outcome }) => outcome === "ran-free").map(({ rpm }) => rpm);
  const shookRpm = shook.length > 0 ? Math.min(...shook) : undefined;
  const below = free.filter((rpm) => shookRpm === undefined || rpm < shookRpm);
  return {
    shookRpm,
    freeRpm: below.length > 0 ? Math.max(...below) : undefined,
    isContradicted: below.length < free.length,
  };
}

/** The fastest speed at which this bit ran free of vibration in this router. */
export const tested = defineLimit({
  name: "tested",
  strength: "guide",
  formula: "fastest trial that ran free below the slowest that shook",
  source: "the shop's own speed trials of this bit in this router",
  figure: ({ trials, policy: { shookMarginRatio } }) => {
    const { shookRpm, freeRpm } = trialVerdict(trials);
    const values = { freeRpm, shookRpm };
    if (freeRpm !== undefined) return { rpm: freeRpm, values };
    return shookRpm === undefined ? undefined : { rpm: shookRpm * shookMarginRatio, values };
  },
  raisedBy: () => ({ code: "try-one-step-faster" }),
});
