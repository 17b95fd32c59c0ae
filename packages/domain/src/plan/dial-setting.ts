import type { CutSetup } from "../cut/setup.ts";
import type { LimitFinding } from "../limit/ceiling.ts";
import { type LimitName, limitsBroken } from "../limit/ceiling.ts";
import type { LimitContext } from "../limit/limit.ts";
import { rimSpeedMPerS } from "../limit/rim-speed.ts";
import type { DialSpeed } from "../router/dial.ts";
import { type Rotation, rotationAt } from "./rotation.ts";

/** The dial setting of a plan, and what the bit does there. */
export type DialSetting = DialSpeed & {
  readonly rimSpeedMPerS: number;
  /** Speed of the slowest point of the edge that touches wood: there it burns first. */
  readonly slowestEdgeMPerS: number;
  /** What spinning does at the fastest it may actually run there. */
  readonly rotation: Rotation;
  /** The next faster mark and the limits it would break. */
  readonly nextFaster: { readonly speed: DialSpeed; readonly breaks: readonly LimitName[] } | undefined;
};

/** What the bit does at this dial setting, one of `speeds`, and why the next faster mark is not taken. */
export function dialSetting(
  fit: DialSpeed,
  speeds: readonly DialSpeed[],
  limits: readonly LimitFinding[],
  context: LimitContext,
  setup: CutSetup,
): DialSetting {
  const faster = speeds.find(({ rpm }) => rpm > fit.rpm);
  return {
    mark: fit.mark,
    rpm: fit.rpm,
    rpmHighest: fit.rpmHighest,
    basis: fit.basis,
    rimSpeedMPerS: rimSpeedMPerS(2 * context.solid.rimRadiusMm, fit.rpm),
    slowestEdgeMPerS: rimSpeedMPerS(2 * setup.leastRadiusMm, fit.rpm),
    rotation: rotationAt(context, fit.rpmHighest),
    nextFaster: faster && { speed: faster, breaks: limitsBroken(limits, faster).map(({ name }) => name) },
  };
}
