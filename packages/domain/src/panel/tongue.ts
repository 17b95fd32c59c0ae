import { stretchesAbove } from "../bit/moments.ts";
import type { Outline } from "../bit/outline.ts";
import { type BitSetting, firstContactMm, widthAtTableMm } from "../bit/section.ts";
import type { Policy } from "../policy/policy.ts";
import { floorTo } from "../quantity/round.ts";
import type { Groove } from "./panel.ts";
import type { YearMovement } from "./year-movement.ts";

/**
 * How a panel's edge sits in the groove: `too-thick` does not go in at all; `wedges` goes in, but its sloping face meets the
 * groove's mouth before the edge is deep enough; `cut-away` leaves no edge.
 */
export type TongueFit = "fits" | "rattles" | "too-thick" | "wedges" | "cut-away";

/** A panel's edge against its groove. */
export type Tongue = {
  readonly shape: "flat" | "raised";
  readonly fit: TongueFit;
  /** At the groove's mouth where the edge reaches in farthest: the thickest part that must go in. */
  readonly thicknessMm: number;
  /** From the panel's edge to where it gets as thick as the groove takes, or to the field. */
  readonly lengthMm: number;
  /** Play in the groove when the edge is deepest in and thickest, and when it is least in and thinnest. */
  readonly playLeastMm: number;
  readonly playMostMm: number;
  /** From the panel's edge to the edge of its field; undefined for a flat panel. */
  readonly fieldEdgeMm: number | undefined;
};

/** How far an edge reaches into the groove, between the two ends of the year at their worst. */
export type EngagementSpan = { readonly leastMm: number; readonly mostMm: number };

/** What a tongue is judged by. */
export type TongueContext = {
  readonly groove: Groove;
  readonly thicknessMm: number;
  readonly movement: YearMovement;
  readonly policy: Pick<Policy, "tonguePlayMinMm" | "tonguePlayMaxMm">;
};

/** A raising bit at its setting. */
export type Raising = {
  readonly outline: Outline;
  readonly setting: BitSetting;
  /** Another height at which it leaves a tongue the groove takes; undefined if none is known. */
  readonly fittingHeightMm: number | undefined;
};

/** Decimals of a millimetre a bit's height can be set to. */
const HEIGHT_DECIMALS = 1;

/** Halvings that take any length of a bit below the last digit that matters. */
const HALVINGS = 40;

/** The edge a flat panel, or one raised by this bit at this setting, puts into the groove. Exact geometry of the outline. */
export function tongueIn(
  context: TongueContext,
  raising: Raising | undefined,
  engagement: EngagementSpan,
): Tongue {
  const { groove, thicknessMm, movement, policy } = context;
  const thicknessAtMm = (inMm: number) =>
    raising === undefined
      ? thicknessMm
      : tongueThicknessMm(raising.outline, raising.setting, Math.max(0, inMm));
  const takenMm = thickestTakenMm(context);
  const thickMm = thicknessAtMm(engagement.mostMm);
  const thinMm = thicknessAtMm(engagement.leastMm);
  const fieldEdgeMm = raising && widthAtTableMm(raising.outline, raising.setting);
  const playLeastMm = groove.widthMm - thickMm * (1 + movement.swellsMostRatio);
  const playMostMm = groove.widthMm - thinMm * (1 - movement.shrinksMostRatio);
  return {
    shape: raising === undefined ? "flat" : "raised",
    fit: fitOf(),
    thicknessMm: thickMm,
    lengthMm: goesInMm(thicknessAtMm, takenMm, fieldEdgeMm ?? groove.depthMm),
    playLeastMm,
    playMostMm,
    fieldEdgeMm,
  };

  function fitOf(): TongueFit {
    if (thicknessAtMm(0) <= 0) return "cut-away";
    if (thicknessAtMm(0) > takenMm) return "too-thick";
    if (thickMm > takenMm) return "wedges";
    return playMostMm > policy.tonguePlayMaxMm ? "rattles" : "fits";
  }
}

/**
 * Thickness in mm of the wood left at a distance `inMm` from the panel's edge: the thickest stretch of the panel's thickness
 * that the bit does not reach there.
 */
export function tongueThicknessMm(outline: Outline, setting: BitSetting, inMm: number): number {
  const { heightMm, fenceMm, thicknessMm } = setting;
  const work = { fromMm: heightMm - thicknessMm, toMm: heightMm };
  let reachedMm = work.fromMm;
  let thickestMm = 0;
  // The outline runs from the tip up, so its stretches come in order.
  for (const segment of outline) {
    if (segment.role !== "edge") continue;
    for (const removed of stretchesAbove(segment, work, fenceMm + inMm)) {
      thickestMm = Math.max(thickestMm, removed.fromMm - reachedMm);
      reachedMm = removed.toMm;
    }
  }
  return Math.max(thickestMm, work.toMm - reachedMm);
}

/**
 * Height in mm, up to a tenth, at which the face leaves just the thickness the groove takes where the edge reaches in
 * farthest; undefined if no height of this bit does (a back-cutter fixes the thickness by itself).
 */
export function heightForGrooveMm(
  context: TongueContext,
  outline: Outline,
  fenceMm: number,
  deepestMm: number,
): number | undefined {
  const { thicknessMm } = context;
  const wantedMm = thickestTakenMm(context);
  const contactMm = firstContactMm(outline, fenceMm + deepestMm);
  if (contactMm === undefined) return undefined;
  // Higher leaves less: rounding up keeps the tongue from being too thick.
  const heightMm = -floorTo(-(thicknessMm - wantedMm + contactMm), HEIGHT_DECIMALS);
  if (heightMm <= contactMm || heightMm > (outline.at(-1)?.toMm ?? 0)) return undefined;
  const leftMm = tongueThicknessMm(outline, { heightMm, fenceMm, thicknessMm }, deepestMm);
  return leftMm <= wantedMm && leftMm > wantedMm - 2 * 10 ** -HEIGHT_DECIMALS ? heightMm : undefined;
}

/** The thickest edge, as it is cut, that still slides when it has swollen. */
function thickestTakenMm({ groove, movement, policy }: TongueContext): number {
  return (groove.widthMm - policy.tonguePlayMinMm) / (1 + movement.swellsMostRatio);
}

/** How far in the edge is no thicker than `takenMm`; its thickness never falls inward. */
function goesInMm(thicknessAtMm: (inMm: number) => number, takenMm: number, farthestMm: number): number {
  if (thicknessAtMm(farthestMm) <= takenMm) return farthestMm;
  let goesMm = 0;
  let sticksMm = farthestMm;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middleMm = (goesMm + sticksMm) / 2;
    if (thicknessAtMm(middleMm) <= takenMm) goesMm = middleMm;
    else sticksMm = middleMm;
  }
  return goesMm;
}
