import { type BitView, bodyBesideMm } from "./bit-view.ts";
import { greatestDifference, type Peak } from "./curve.ts";
import type { Fit } from "./fit.ts";
import { greatestBetween, leastBetween } from "./range.ts";
import type { Target } from "./target.ts";

/**
 * Whether a view stays short of its target at every raise between two. Taken at the target's probes: at each of them the fence
 * stands at least as far back as the least radius that passes it needs, and the edges reach no farther than the greatest one.
 */
export function isShortBetween(view: BitView, target: Target, fromMm: number, toMm: number): boolean {
  for (const gapMm of view.gapsMm) {
    if (leastBetween(target.need, gapMm + fromMm, gapMm + toMm) > -Infinity) return true;
  }
  const leastFenceMm = Math.max(view.leastFenceMm, bodyBesideMm(view, fromMm, toMm, target.topMm));
  let shortMm = -Infinity;
  for (const { zMm, depthMm } of target.needProbes) {
    shortMm = Math.max(shortMm, depthMm - greatestBetween(view.edges, zMm - toMm, zMm - fromMm));
    if (leastFenceMm + shortMm > 0) return true;
  }
  for (const { zMm, depthMm } of target.limitProbes) {
    const fenceMm = leastBetween(view.edges, zMm - toMm, zMm - fromMm) - depthMm;
    if (fenceMm + shortMm > 0) return true;
  }
  return false;
}

/**
 * At least so short stays a view between two raises, mm, from where a fit between them is stopped and is the shortest. At each
 * of these places either the wall's point is held and the bit passes, or the bit's point is held and the wall does.
 */
export function leastShortNearMm(
  view: BitView,
  target: Target,
  fit: Fit,
  fromMm: number,
  toMm: number,
): number {
  const { edges, leastFenceMm } = view;
  const { stopped, shortest, raiseMm } = fit;
  if (shortest === undefined) return -Infinity;
  const stoppedOnBitMm = stopped.atMm - raiseMm;
  const fenceMm = Math.max(
    leastFenceMm,
    leastBetween(edges, stopped.atMm - toMm, stopped.atMm - fromMm) - stopped.secondMm,
    stopped.firstMm - greatestBetween(target.limit, stoppedOnBitMm + fromMm, stoppedOnBitMm + toMm),
  );
  const shortOnBitMm = shortest.atMm - raiseMm;
  const shortMm = Math.max(
    shortest.firstMm - greatestBetween(edges, shortest.atMm - toMm, shortest.atMm - fromMm),
    leastBetween(target.need, shortOnBitMm + fromMm, shortOnBitMm + toMm) - shortest.secondMm,
  );
  return Math.max(fenceMm + shortMm, leastShortTogetherMm(view, stopped, shortest, fromMm, toMm));
}

/**
 * The same with both points of the wall held: the bit passes them together. It is what finds a slope that slides along
 * another one, where each point alone says nothing.
 */
function leastShortTogetherMm(
  { edges }: BitView,
  stopped: Peak,
  shortest: Peak,
  fromMm: number,
  toMm: number,
): number {
  const passedFromMm = stopped.atMm - toMm;
  const passedToMm = stopped.atMm - fromMm;
  if (leastBetween(edges, passedFromMm, passedToMm) === -Infinity) return -Infinity;
  const apartMm = stopped.atMm - shortest.atMm;
  const reach = greatestDifference(edges, apartMm, edges, passedFromMm, passedToMm);
  return shortest.firstMm - stopped.secondMm - reach.mm;
}
