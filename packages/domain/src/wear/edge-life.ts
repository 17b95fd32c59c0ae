import type { Policy } from "../policy/policy.ts";
import { DomainError } from "../quantity/fault.ts";
import { median } from "../quantity/median.ts";
import { rangeFaults } from "../quantity/range.ts";
import type { Wood } from "../wood/wood.ts";
import type { ToothMaterial } from "./tooth-material.ts";
import { wearFactor } from "./wear-factor.ts";

/** Metres cut in one wood since the last sharpening. */
export type Use = { readonly wood: Wood; readonly metres: number };

export type EdgeLifeInput = {
  readonly toothMaterial: ToothMaterial;
  /** Since the last sharpening. */
  readonly uses: readonly Use[];
  /** What this bit's edges lasted before, from one sharpening to the next, each as `usedEquivalentM` gave it. */
  readonly pastLives?: readonly number[];
};

export type EdgeLife = {
  /** Metres cut, as metres of solid wood of middling density. */
  readonly usedEquivalentM: number;
  readonly expectedM: number;
  readonly usedRatio: number;
  readonly basis: "own-history" | "estimate";
  readonly dueForSharpening: boolean;
};

/** Accepted metres of one use, and equivalent metres of a past life. */
export const WEAR_RANGES = {
  metres: { min: 0, max: 1e6 },
  pastLifeM: { min: 0, max: 1e9 },
} as const;

/** A life this short ended by mishap, not by wear, m. Ours. */
const SHORTEST_LIFE_M = 1;

/**
 * How much of its edge life a bit has used. The life is the median of the bit's own past ones, or the policy's for the tooth
 * material if there is none; lives under a metre ended by mishap and do not count. Judgement, nothing measured: an edge that
 * burns, pulls or leaves a rough face is dull whatever this says. Throws a DomainError (`/uses/0/metres`, `/pastLives/0`).
 * @example
 * const uses = [{ wood: woodById("mdf"), metres: 160 }];
 * edgeLife({ toothMaterial: "carbide-tipped", uses }, DEFAULT_POLICY) // → { usedEquivalentM: 400, expectedM: 800, usedRatio: 0.5 }
 */
export function edgeLife({ toothMaterial, uses, pastLives = [] }: EdgeLifeInput, policy: Policy): EdgeLife {
  const faults = [
    ...uses.flatMap(({ metres }, index) => rangeFaults(`/uses/${index}/metres`, metres, WEAR_RANGES.metres)),
    ...pastLives.flatMap((lifeM, index) => rangeFaults(`/pastLives/${index}`, lifeM, WEAR_RANGES.pastLifeM)),
  ];
  if (faults.length > 0) throw new DomainError(faults);
  const usedEquivalentM = uses.reduce(
    (sum, { wood, metres }) => sum + metres * wearFactor(wood, toothMaterial),
    0,
  );
  const own = median(pastLives.filter((lifeM) => lifeM >= SHORTEST_LIFE_M));
  const expectedM = own ?? estimatedLifeM(toothMaterial, policy);
  const usedRatio = usedEquivalentM / expectedM;
  return {
    usedEquivalentM,
    expectedM,
    usedRatio,
    basis: own === undefined ? "estimate" : "own-history",
    dueForSharpening: usedRatio >= policy.edgeLifeDueRatio,
  };
}

function estimatedLifeM(toothMaterial: ToothMaterial, policy: Policy): number {
  switch (toothMaterial) {
    case "high-speed-steel":
      return policy.edgeLifeHighSpeedSteelM;
    case "carbide-tipped":
      return policy.edgeLifeCarbideTippedM;
    case "solid-carbide":
      return policy.edgeLifeSolidCarbideM;
    case "diamond":
      return policy.edgeLifeDiamondM;
    case "unknown":
      return Math.min(
        policy.edgeLifeHighSpeedSteelM,
        policy.edgeLifeCarbideTippedM,
        policy.edgeLifeSolidCarbideM,
        policy.edgeLifeDiamondM,
      );
  }
}
