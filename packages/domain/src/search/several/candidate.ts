import { mapInSteps, type Steps } from "../../quantity/steps.ts";
import { alignmentsMm, marksMm } from "../alignments.ts";
import type { BitView } from "../bit-view.ts";
import { type Fit, fitAt } from "../fit.ts";
import { depthAtMm, type Piece } from "../piece.ts";
import { FITS_IN_ONE_STEP, fitsWithin, spanningRaises } from "../raises.ts";
import { type Target, targetOf } from "../target.ts";
import { runsWithin } from "../windows.ts";
import { add, type BitSet, emptySet } from "./bit-set.ts";
import { MOST_WITNESSES } from "./witness.ts";

/** A witness as the target of a cut shows it. */
export type Place = { readonly heightMm: number; readonly depthMm: number };

/** A bit at one height, as far forward as the target it is seen against lets it come. */
export type Cut = { readonly view: BitView; readonly fit: Fit; readonly target: Target };

/** A cut, and the witnesses at which it leaves nothing that must go. */
export type Candidate = Cut & {
  readonly covers: BitSet;
  /** The least by which it goes deeper than it must at what it covers, mm. */
  readonly marginMm: number;
};

/** Depths this much short of what must go are rounding, mm. */
const ROUNDING_MM = 1e-9;

/** Parts of the target that are sloping or round, each alone: along these a bit may slide without any corners meeting. */
export function slidingParts(target: Target): Target[] {
  return target.need.filter(isSloping).map((piece) => targetOf(target.wall, [piece]));
}

/**
 * The candidates of one view: at every height where a mark of the bit lies on one of the wall, and where it makes a sliding
 * part.
 */
export function* candidatesOf(
  view: BitView,
  target: Target,
  marks: readonly number[],
  parts: readonly Target[],
  places: readonly Place[],
): Steps<{ readonly candidates: readonly Candidate[]; readonly isComplete: boolean }> {
  const aligned = alignmentsMm(marks, marksMm(view.edges), view.raiseFromMm, view.raiseToMm);
  const raises = [...aligned];
  let isComplete = true;
  for (const part of view.edges.some(isSloping) ? parts : []) {
    const sliding = yield* slidingRaises(view, part, marks);
    raises.push(...sliding.raisesMm);
    isComplete &&= sliding.isComplete;
    yield;
  }
  const candidates = yield* mapInSteps(raises, FITS_IN_ONE_STEP, (raiseMm) =>
    candidateOf({ view, fit: fitAt(view, target, raiseMm), target }, places),
  );
  return { candidates: candidates.filter((candidate) => candidate !== undefined), isComplete };
}

/** A cut with what it covers of the witnesses, in their order; undefined if that is nothing. */
export function candidateOf(cut: Cut, places: readonly Place[]): Candidate | undefined {
  if (cut.fit.fenceMm >= cut.view.rimMm) return undefined;
  let covers: BitSet | undefined;
  let marginMm = Infinity;
  places.forEach(({ heightMm, depthMm }, index) => {
    const pastMm = reachMm(cut, heightMm) - depthMm;
    if (pastMm < -ROUNDING_MM) return;
    covers ??= emptySet(MOST_WITNESSES);
    add(covers, index);
    marginMm = Math.min(marginMm, pastMm);
  });
  return covers && { ...cut, covers, marginMm };
}

/** How deep a cut goes at a height above the table; −∞ if it has no edge there. */
export function reachMm({ view: { edges }, fit: { raiseMm, fenceMm } }: Cut, zMm: number): number {
  let depthMm = -Infinity;
  for (const piece of edges) {
    const onBitMm = zMm - raiseMm;
    if (onBitMm < piece.fromMm || onBitMm > piece.toMm) continue;
    depthMm = Math.max(depthMm, depthAtMm(piece, onBitMm) - fenceMm);
  }
  return depthMm;
}

/**
 * Raises at which a view makes one part of the wall alone: those found, and where that begins and ends, where another place of
 * the bit touches.
 */
function* slidingRaises(
  view: BitView,
  part: Target,
  marks: readonly number[],
): Steps<{ readonly raisesMm: readonly number[]; readonly isComplete: boolean }> {
  const spanning = spanningRaises(view, part);
  if (spanning === undefined) return { raisesMm: [], isComplete: true };
  const { fits, isComplete } = yield* fitsWithin(view, part, marks, spanning);
  const raisesMm = runsWithin(view, part, fits).flatMap(({ fits: within, window }) => [
    window.fromMm,
    ...within.map(({ raiseMm }) => raiseMm),
    window.toMm,
  ]);
  return { raisesMm, isComplete };
}

function isSloping(piece: Piece): boolean {
  return piece.kind === "arc" || piece.startDepthMm !== piece.endDepthMm;
}
