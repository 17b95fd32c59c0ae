import { mapInSteps, type Steps } from "../quantity/steps.ts";
import { alignmentsMm, marksMm } from "./alignments.ts";
import type { BitView } from "./bit-view.ts";
import { isShortBetween, leastShortNearMm } from "./bounds.ts";
import { type Fit, fitAt, isWithin } from "./fit.ts";
import type { Target } from "./target.ts";

/** Raises between which a view may come within tolerance. */
export type Stretch = { readonly fromMm: number; readonly toMm: number };

/** What was looked at, in rising order, and whether everything that matters was. */
export type LookedAt = { readonly fits: readonly Fit[]; readonly isComplete: boolean };

/** Bounds are taken of stretches down to this width, mm; then every mark of the bit is laid on every mark of the wall. */
const COARSE_MM = 2;

/** If no marks fit, stretches are halved down to this width, mm: nobody sets closer. Ours. */
const FINE_MM = 1e-4;

/** So many halvings are made for one view; beyond, the search is not complete. */
const HALVINGS_MOST = 400;

/** Heights looked at in one step. */
export const FITS_IN_ONE_STEP = 64;

/** The raises at which edges stand wherever something must go; undefined if they are too short for that. */
export function spanningRaises(
  { edges, raiseFromMm, raiseToMm }: BitView,
  { need }: Target,
): Stretch | undefined {
  const fromMm = Math.max(raiseFromMm, (need.at(-1)?.toMm ?? 0) - (edges.at(-1)?.toMm ?? 0));
  const toMm = Math.min(raiseToMm, (need[0]?.fromMm ?? 0) - (edges[0]?.fromMm ?? 0));
  return edges.length > 0 && toMm >= fromMm ? { fromMm, toMm } : undefined;
}

/**
 * Fits of a view at the raises that the bounds leave: where marks align, at the ends of what is left and, if none of these
 * fits, between them.
 */
export function* fitsWithin(
  view: BitView,
  target: Target,
  wallMarks: readonly number[],
  spanning: Stretch,
): Steps<LookedAt> {
  const left = stretchesLeft(view, target, spanning);
  if (left.length === 0) return { fits: [], isComplete: true };
  const bitMarks = marksMm(view.edges);
  const raises = left.flatMap(({ fromMm, toMm }) => [
    fromMm,
    ...alignmentsMm(wallMarks, bitMarks, fromMm, toMm),
    (fromMm + toMm) / 2,
    toMm,
  ]);
  const fits = yield* mapInSteps(raises, FITS_IN_ONE_STEP, (raiseMm) => fitAt(view, target, raiseMm));
  if (fits.some(isWithin)) return { fits: sorted(fits), isComplete: true };
  const found = yield* halve(view, target, left);
  return { fits: sorted([...fits, ...found.fits]), isComplete: found.isComplete };
}

/** The stretches that cannot be ruled out, neighbours joined. */
function stretchesLeft(view: BitView, target: Target, whole: Stretch): Stretch[] {
  const left: Stretch[] = [];
  const look = (fromMm: number, toMm: number): void => {
    if (isShortBetween(view, target, fromMm, toMm)) return;
    if (toMm - fromMm > COARSE_MM) {
      const middleMm = (fromMm + toMm) / 2;
      look(fromMm, middleMm);
      look(middleMm, toMm);
      return;
    }
    const last = left.at(-1);
    if (last?.toMm === fromMm) left[left.length - 1] = { fromMm: last.fromMm, toMm };
    else left.push({ fromMm, toMm });
  };
  look(whole.fromMm, whole.toMm);
  return left;
}

/** Halves stretches, the one whose middle is the least short first, until one fits or none can. */
function* halve(view: BitView, target: Target, left: readonly Stretch[]): Steps<LookedAt> {
  const open = left.map((stretch) => middleOf(view, target, stretch));
  for (let halvings = 0; halvings < HALVINGS_MOST; halvings += 1) {
    if (halvings % FITS_IN_ONE_STEP === FITS_IN_ONE_STEP - 1) yield;
    const next = takeLeastShort(open);
    if (next === undefined) return { fits: [], isComplete: true };
    const { fromMm, toMm, fit } = next;
    if (isWithin(fit)) return { fits: [fit], isComplete: true };
    if (toMm - fromMm <= FINE_MM || leastShortNearMm(view, target, fit, fromMm, toMm) > 0) continue;
    for (const half of [
      { fromMm, toMm: fit.raiseMm },
      { fromMm: fit.raiseMm, toMm },
    ]) {
      if (!isShortBetween(view, target, half.fromMm, half.toMm)) open.push(middleOf(view, target, half));
    }
  }
  return { fits: [], isComplete: false };
}

function middleOf(view: BitView, target: Target, stretch: Stretch) {
  return { ...stretch, fit: fitAt(view, target, (stretch.fromMm + stretch.toMm) / 2) };
}

function takeLeastShort<Open extends { readonly fit: Fit }>(open: Open[]): Open | undefined {
  let least = 0;
  open.forEach(({ fit }, index) => {
    if (fit.shortMm < (open[least]?.fit.shortMm ?? Infinity)) least = index;
  });
  return open.splice(least, 1)[0];
}

function sorted(fits: readonly Fit[]): Fit[] {
  return [...fits].sort((one, other) => one.raiseMm - other.raiseMm);
}
