import type { ProfilePoint } from "../bit/profile.ts";
import type { BitView } from "./bit-view.ts";
import { type Fit, fitAt, isWithin } from "./fit.ts";
import { greatestLeft, type Left, removedBy } from "./left.ts";
import type { Stretch } from "./raises.ts";
import type { Target } from "./target.ts";
import type { Presentation } from "./wanted.ts";
import { type Run, runsWithin } from "./windows.ts";

/** A bit set so that it leaves what is wanted, as far forward as it may come. */
export type SearchSetting = {
  readonly bitId: string;
  readonly presentation: Presentation;
  readonly heightMm: number;
  readonly fenceMm: number;
  /** The heights around it that stay within tolerance. */
  readonly heightsMm: { readonly fromMm: number; readonly toMm: number };
  /** Distance from the wanted wall to what is left farthest from it, and where that is. */
  readonly greatestLeftMm: number;
  /** x from the edge, z from the front face, however the work is presented. */
  readonly leftAt: ProfilePoint;
};

/** A fit of a view with what it leaves and the raises around it that are within tolerance. */
export type Found = {
  readonly view: BitView;
  readonly fit: Fit;
  readonly left: Left;
  readonly window: Stretch;
};

/** How often the best raise is closed in on. */
const CLOSING_IN = 6;

/** Fits of a window that what they leave is computed of at first. */
const FITS_LOOKED_AT = 4;

/** A window narrower than this has no better place in it, and less than this left is nothing, mm. */
const NO_MATTER_MM = 1e-3;

/** The fit that leaves least, of all that are within tolerance among those looked at in rising order; undefined if none is. */
export function bestFound(view: BitView, target: Target, fits: readonly Fit[]): Found | undefined {
  let best: Found | undefined;
  for (const run of runsWithin(view, target, fits)) {
    const found = bestOfRun(view, target, run);
    if (best === undefined || found.left.mm < best.left.mm) best = found;
  }
  return best;
}

/** What one fit leaves; or the first that is found of `enoughMm`. */
export function leftBy(view: BitView, target: Target, fit: Fit, enoughMm = Infinity): Left {
  return greatestLeft(target.limit, removedBy([{ view, fit }], target.topMm), enoughMm);
}

/** A place given as a wall shows it, in x from the edge and z from the front face. */
export function placeOf(
  { work, face }: Presentation,
  thicknessMm: number,
  { heightMm, depthMm }: Pick<Left, "heightMm" | "depthMm">,
): ProfilePoint {
  if (work === "flat") return { xMm: depthMm, zMm: heightMm };
  return { xMm: heightMm, zMm: face === "front" ? depthMm : thicknessMm - depthMm };
}

/** A found fit in the terms of the shop. */
export function settingOf(
  { view, fit, left, window }: Found,
  target: Target,
  thicknessMm: number,
): SearchSetting {
  const ends = [view.heightMm(window.fromMm), view.heightMm(window.toMm)];
  return {
    bitId: view.bit.id,
    presentation: view.presentation,
    heightMm: view.heightMm(fit.raiseMm),
    fenceMm: fit.fenceMm,
    heightsMm: { fromMm: Math.min(...ends), toMm: Math.max(...ends) },
    greatestLeftMm: left.mm,
    leftAt: placeOf(target.wall, thicknessMm, left),
  };
}

function bestOfRun(view: BitView, target: Target, { fits, window }: Run): Found {
  const [first, ...others] = spread(fits);
  const middleMm = (window.fromMm + window.toMm) / 2;
  const start = first ?? fitAt(view, target, middleMm);
  let best: Found = { view, fit: start, left: leftBy(view, target, start), window };
  const tryFit = (fit: Fit) => {
    if (best.left.mm <= NO_MATTER_MM || !isWithin(fit)) return;
    const left = leftBy(view, target, fit, best.left.mm);
    if (left.mm < best.left.mm) best = { view, fit, left, window };
  };
  others.forEach(tryFit);
  const widthMm = window.toMm - window.fromMm;
  if (best.left.mm <= NO_MATTER_MM || widthMm <= NO_MATTER_MM) return best;
  tryFit(fitAt(view, target, middleMm));
  for (let stepMm = widthMm / 4, round = 0; round < CLOSING_IN; round += 1, stepMm /= 2) {
    for (const raiseMm of [best.fit.raiseMm - stepMm, best.fit.raiseMm + stepMm]) {
      if (raiseMm >= window.fromMm && raiseMm <= window.toMm) tryFit(fitAt(view, target, raiseMm));
    }
  }
  return best;
}

/** Some of many, evenly. */
function spread(fits: readonly Fit[]): Fit[] {
  const every = Math.max(1, Math.ceil(fits.length / FITS_LOOKED_AT));
  return fits.filter((_, index) => index % every === 0);
}
