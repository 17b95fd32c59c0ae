import type { Bit } from "../bit/bit.ts";
import { bitSolid } from "../bit/solid.ts";
import { speedCeiling } from "../limit/ceiling.ts";
import type { LimitStrength } from "../limit/limit.ts";
import type { SpeedTrial } from "../limit/trial.ts";
import type { Policy } from "../policy/policy.ts";
import type { Router } from "../router/router.ts";
import { limitContext } from "./limit-context.ts";

/** A router that sets no limit of its own: what is left is the bit's. */
const ANY_ROUTER: Router = { minRpm: 1000, maxRpm: 60_000 };

/**
 * What a bit itself allows, rpm, whatever router it is in: the least of its hard limits, which a speed must stay under with its uncertainty, and
 * of its guides; of trials, those that are given. For a bit that `bitFaults` found nothing wrong with.
 * @example
 * const bit = { form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }, shankDiameterMm: 12.7, wings: 2 };
 * bitCeilings({ ...bit, markedMaxRpm: 16_000 }, DEFAULT_POLICY) // → { hard: 16_000, guide: 24_000 }
 */
export function bitCeilings(
  bit: Bit,
  policy: Policy,
  trials: readonly SpeedTrial[] = [],
): Readonly<Record<LimitStrength, number>> {
  const { limits } = speedCeiling(limitContext({ bit, router: ANY_ROUTER, policy, trials }, bitSolid(bit)));
  const least = (kind: LimitStrength) =>
    Math.min(ANY_ROUTER.maxRpm, ...limits.flatMap(({ strength, rpm }) => (strength === kind ? [rpm] : [])));
  return { hard: least("hard"), guide: least("guide") };
}
