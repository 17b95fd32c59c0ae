import { type BitView, bodyBesideMm } from "./bit-view.ts";
import { greatestDifference, isSpanned, type Peak } from "./curve.ts";
import type { Target } from "./target.ts";

/** A view of a bit at one height, as far forward as it may come. */
export type Fit = {
  readonly raiseMm: number;
  readonly fenceMm: number;
  /** What stops it from coming farther forward. */
  readonly stop: "wood" | "pilot" | "body";
  /**
   * How far it stays short of what must go, straight in from the fence: 0 or less if it is within tolerance; ∞ if it has no
   * edge there.
   */
  readonly shortMm: number;
  /** Where the wood stops it, by the bit's radius (first) and the wall's depth (second); heights above the table. */
  readonly stopped: Peak;
  /**
   * Where it is the shortest, by the depth needed (first) and the bit's radius (second); heights above the table. Undefined if
   * it has no edge somewhere.
   */
  readonly shortest: Peak | undefined;
};

/** What is short by less is rounding, mm. */
const ROUNDING_MM = 1e-9;

/** The fit at one height: fence f = max over z of (r(h − z) − w(z)), never less than pilot and body allow. */
export function fitAt(view: BitView, target: Target, raiseMm: number): Fit {
  const stopped = greatestDifference(view.edges, raiseMm, target.limit);
  const bodyMm = bodyBesideMm(view, raiseMm, raiseMm, target.topMm);
  const fenceMm = Math.max(stopped.mm, view.leastFenceMm, bodyMm);
  const shortest = shortestOf(view, target, raiseMm);
  return {
    raiseMm,
    fenceMm,
    stop: fenceMm === stopped.mm ? "wood" : fenceMm === bodyMm ? "body" : "pilot",
    shortMm: shortest === undefined ? Infinity : shortest.mm + fenceMm,
    stopped,
    shortest,
  };
}

/** Whether a fit leaves nothing that must go. */
export function isWithin({ shortMm }: Fit): boolean {
  return shortMm <= ROUNDING_MM;
}

/** Where the edges' radius stays farthest under what must go, before the fence is set. */
function shortestOf({ edges }: BitView, { need }: Target, raiseMm: number): Peak | undefined {
  if (!isSpanned(need, edges, raiseMm)) return undefined;
  const peak = greatestDifference(need, -raiseMm, edges);
  return { ...peak, atMm: peak.atMm + raiseMm };
}
