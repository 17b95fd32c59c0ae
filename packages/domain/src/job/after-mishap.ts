import type { PastUse } from "../plan/past-use.ts";
import type { Policy, PolicyLayer } from "../policy/policy.ts";
import { RULES } from "../policy/rules.ts";

/** What went wrong at a set-up, and the speed it ran at. */
export type Mishap = { readonly outcome: PastUse["outcome"]; readonly rpm: number };

/** What is left runs at most at this share of the speed at which it burnt or chattered. Ours: about one mark of a dial. */
const SLOWER_RATIO = 0.85;

/** The passes that are left are so much lighter after chatter or tear-out. Ours: one pass more where there were two. */
const LIGHTER_RATIO = 0.7;

type Tightened = {
  -readonly [Name in keyof PolicyLayer]: PolicyLayer[Name];
};

/**
 * What tightens the plan of what is still to do with a bit after what came out of it: slower after burning and chatter, lighter passes
 * after chatter and tear-out, a lighter last pass after burning and tear-out. Undefined if nothing of it tells how to go on: a bit that came
 * loose is held. Source: common practice; how much is ours.
 * @example
 * afterMishaps([{ outcome: "scorched", rpm: 16_000 }], DEFAULT_POLICY) // → { speedMaxRpm: 13_600, finishBiteMm: 0.56 }
 */
export function afterMishaps(mishaps: readonly Mishap[], policy: Policy): PolicyLayer | undefined {
  const layer: Tightened = {};
  const lighter = (
    name: "cutForceMaxN" | "handheldCutForceMaxN" | "passSectionMaxMm2" | "handheldPassSectionMaxMm2",
  ) => {
    layer[name] = Math.max(RULES[name].min, policy[name] * LIGHTER_RATIO);
  };
  for (const { outcome, rpm } of mishaps) {
    if (outcome === "scorched" || outcome === "chattered") {
      const slowerRpm = Math.max(RULES.speedMaxRpm.min, Math.floor(rpm * SLOWER_RATIO));
      layer.speedMaxRpm = Math.min(layer.speedMaxRpm ?? slowerRpm, slowerRpm);
    }
    if (outcome === "chattered" || outcome === "tore-out") {
      lighter("cutForceMaxN");
      lighter("handheldCutForceMaxN");
      lighter("passSectionMaxMm2");
      lighter("handheldPassSectionMaxMm2");
    }
    if (outcome === "scorched" || outcome === "tore-out") {
      layer.finishBiteMm = Math.max(RULES.finishBiteMm.min, policy.finishBiteMm * LIGHTER_RATIO);
    }
  }
  return Object.keys(layer).length === 0 ? undefined : layer;
}
