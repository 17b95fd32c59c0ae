import { outlineLengthMm } from "../bit/outline.ts";
import type { ProfilePoint } from "../bit/profile.ts";
import { alignmentsMm, marksMm } from "./alignments.ts";
import type { BitView } from "./bit-view.ts";
import { type Fit, fitAt } from "./fit.ts";
import { type Stretch, spanningRaises } from "./raises.ts";
import { leftBy, placeOf } from "./setting.ts";
import type { Target } from "./target.ts";
import { deepestMm, type Presentation } from "./wanted.ts";

/** Why a bit was not taken: what keeps it farthest from the wanted profile in the presentation that brings it nearest. */
export type NotTakenReason =
  /** Its edges are shorter than what must go is high. */
  | { readonly code: "too-short"; readonly lengthMm: number; readonly neededMm: number }
  /** It does not stand out of the table far enough for its edges to come to where something must go. */
  | { readonly code: "out-of-reach"; readonly reachMm: number; readonly neededMm: number }
  /** It is too small to reach so deep. */
  | { readonly code: "too-small"; readonly reachMm: number; readonly neededMm: number }
  /** Its pilot, or a part that does not cut, keeps it from reaching so deep. */
  | {
      readonly code: "pilot-in-the-way" | "body-in-the-way";
      readonly radiusMm: number;
      readonly reachMm: number;
      readonly neededMm: number;
    }
  /** Wherever it would take anything of the waste, it would cut into what must stay. */
  | { readonly code: "gouges-everywhere" }
  /** At the nearest of the heights looked at it leaves this much. */
  | {
      readonly code: "leaves-too-much";
      readonly heightMm: number;
      readonly leftMm: number;
      readonly leftAt: ProfilePoint;
    }
  /** In several set-ups, another bit takes away all that this one could. */
  | { readonly code: "dominated"; readonly byBitId: string };

export type NotTaken = {
  readonly bitId: string;
  /** The presentation that brings it nearest. */
  readonly presentation: Presentation;
  readonly reason: NotTakenReason;
};

/** Heights looked at in one presentation to see what is left. */
const LOOKED_AT_MOST = 6;

/** From what comes nearest to what is hopeless. */
const NEARNESS: readonly (string | undefined)[] = [
  "leaves-too-much",
  "pilot-in-the-way",
  "body-in-the-way",
  "gouges-everywhere",
  "too-small",
  "out-of-reach",
  "too-short",
];

type Short = { readonly view: BitView; readonly target: Target; readonly fit: Fit };

/** A view of a bit, with the fits that the search looked at: none where bounds ruled all of them out. */
export type Seen = {
  readonly view: BitView;
  readonly target: Target;
  readonly marks: readonly number[];
  readonly fits: readonly Fit[];
};

/** A bit that was not taken, with how near it came; what it leaves is worked out for those that are asked about. */
export type Refused = {
  readonly bitId: string;
  /** The smaller the nearer: by what keeps it away, then by how far. */
  readonly ranks: readonly [number, number];
  readonly explain: () => NotTaken;
};

/** Why none of these views of a bit fits. */
export function whyNot(views: readonly Seen[], thicknessMm: number): Refused | undefined {
  const reasons = views.map((seen) => {
    const { view, target } = seen;
    const spanning = spanningRaises(view, target);
    const reason = spanning === undefined ? reachReason(view, target) : depthReason(view, target);
    if (reason !== undefined || spanning === undefined) return { view, reason };
    const fit = leastShort(seen, spanning);
    return fitReason({ view, target, fit });
  });
  const [nearest] = reasons.sort((one, other) => rank(one) - rank(other) || shortMm(one) - shortMm(other));
  if (nearest === undefined) return undefined;
  const { view } = nearest;
  const { id: bitId } = view.bit;
  const said = (reason: NotTakenReason) => ({ bitId, presentation: view.presentation, reason });
  const ranks = [rank(nearest), shortMm(nearest)] as const;
  if ("short" in nearest)
    return { bitId, ranks, explain: () => said(leavesTooMuch(nearest.short, thicknessMm)) };
  const { reason } = nearest;
  return reason && { bitId, ranks, explain: () => said(reason) };
}

type Reason =
  | { readonly view: BitView; readonly reason: NotTakenReason | undefined }
  | { readonly view: BitView; readonly short: Short };

function rank(found: Reason): number {
  const code = "short" in found ? "leaves-too-much" : found.reason?.code;
  return NEARNESS.indexOf(code);
}

function shortMm(found: Reason): number {
  return "short" in found ? Math.min(found.short.fit.shortMm, Number.MAX_VALUE) : 0;
}

function reachReason(view: BitView, { need }: Target): NotTakenReason {
  const neededFromMm = need[0]?.fromMm ?? 0;
  const neededToMm = need.at(-1)?.toMm ?? 0;
  const edgesFromMm = view.edges[0]?.fromMm ?? 0;
  const edgesToMm = view.edges.at(-1)?.toMm ?? 0;
  const lengthMm = edgesToMm - edgesFromMm;
  if (lengthMm < neededToMm - neededFromMm) {
    return { code: "too-short", lengthMm, neededMm: neededToMm - neededFromMm };
  }
  const heights = [view.heightMm(neededToMm - edgesToMm), view.heightMm(neededFromMm - edgesFromMm)];
  const reachMm = outlineLengthMm(view.bit.outline);
  return { code: "out-of-reach", reachMm, neededMm: Math.min(...heights) };
}

function depthReason(view: BitView, { need }: Target): NotTakenReason | undefined {
  const neededMm = deepestMm(need);
  const reachMm = view.rimMm - view.leastFenceMm;
  if (reachMm >= neededMm) return undefined;
  if (view.rimMm < neededMm) return { code: "too-small", reachMm: view.rimMm, neededMm };
  return { code: "pilot-in-the-way", radiusMm: view.leastFenceMm, reachMm, neededMm };
}

/** The fit that is the least short of those that were looked at; if there are none, of some. */
function leastShort({ view, target, marks, fits }: Seen, { fromMm, toMm }: Stretch): Fit {
  let least = fits[0] ?? fitAt(view, target, fromMm);
  const others = fits.length > 0 ? fits : someFits(view, target, marks, fromMm, toMm);
  for (const fit of others) if (fit.shortMm < least.shortMm) least = fit;
  return least;
}

function someFits(
  view: BitView,
  target: Target,
  marks: readonly number[],
  fromMm: number,
  toMm: number,
): Fit[] {
  const all = alignmentsMm(marks, marksMm(view.edges), fromMm, toMm);
  const every = Math.max(1, Math.ceil(all.length / LOOKED_AT_MOST));
  const some = [toMm, ...all.filter((_, index) => index % every === 0)];
  return some.map((raiseMm) => fitAt(view, target, raiseMm));
}

function fitReason(short: Short): Reason {
  const { view, target, fit } = short;
  const neededMm = deepestMm(target.need);
  const isFreeOfWood = fit.shortest !== undefined && fit.stopped.mm + fit.shortest.mm <= 0;
  if (fit.stop !== "wood" && isFreeOfWood) {
    const code = fit.stop === "pilot" ? "pilot-in-the-way" : "body-in-the-way";
    const reachMm = view.rimMm - fit.fenceMm;
    return { view, reason: { code, radiusMm: fit.fenceMm, reachMm, neededMm } };
  }
  if (fit.fenceMm >= view.rimMm) return { view, reason: { code: "gouges-everywhere" } };
  return { view, short };
}

function leavesTooMuch({ view, target, fit }: Short, thicknessMm: number): NotTakenReason {
  const left = leftBy(view, target, fit);
  return {
    code: "leaves-too-much",
    heightMm: view.heightMm(fit.raiseMm),
    leftMm: left.mm,
    leftAt: placeOf(target.wall, thicknessMm, left),
  };
}
