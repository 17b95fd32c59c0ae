import type { BitView } from "./bit-view.ts";
import { type Fit, fitAt, isWithin } from "./fit.ts";
import type { Stretch } from "./raises.ts";
import type { Target } from "./target.ts";

/** Fits within tolerance without a break between them, and the raises at which that begins and ends. */
export type Run = { readonly fits: readonly Fit[]; readonly window: Stretch };

/** How often the end of a window is halved toward. */
const END_HALVINGS = 20;

/** Neighbouring fits that are within tolerance, halfway between them too, with where that begins and ends. */
export function runsWithin(view: BitView, target: Target, fits: readonly Fit[]): Run[] {
  const runs: { fits: Fit[]; before: Fit | undefined; after: Fit | undefined }[] = [];
  let before: Fit | undefined;
  for (const fit of fits) {
    const open = runs.at(-1);
    const isOpen = open !== undefined && open.after === undefined;
    if (isWithin(fit)) {
      const between = before && fitAt(view, target, (before.raiseMm + fit.raiseMm) / 2);
      if (isOpen && (between === undefined || isWithin(between))) open.fits.push(fit);
      else {
        if (isOpen) open.after = between;
        runs.push({ fits: [fit], before: isOpen ? between : before, after: undefined });
      }
    } else if (isOpen) open.after = fit;
    before = fit;
  }
  return runs.map((run) => ({ fits: run.fits, window: windowOf(view, target, run) }));
}

function windowOf(
  view: BitView,
  target: Target,
  { fits, before, after }: { fits: readonly Fit[]; before: Fit | undefined; after: Fit | undefined },
): Stretch {
  const firstMm = fits[0]?.raiseMm ?? 0;
  const lastMm = fits.at(-1)?.raiseMm ?? firstMm;
  return {
    fromMm: before === undefined ? firstMm : endMm(view, target, firstMm, before.raiseMm),
    toMm: after === undefined ? lastMm : endMm(view, target, lastMm, after.raiseMm),
  };
}

/** The last raise within tolerance on the way from one that is to one that is not. */
function endMm(view: BitView, target: Target, withinMm: number, outsideMm: number): number {
  let [goodMm, badMm] = [withinMm, outsideMm];
  for (let halving = 0; halving < END_HALVINGS; halving += 1) {
    const middleMm = (goodMm + badMm) / 2;
    if (isWithin(fitAt(view, target, middleMm))) goodMm = middleMm;
    else badMm = middleMm;
  }
  return goodMm;
}
