import { type ConstraintContext, type LoadedPass, loadedPass } from "./constraints.ts";
import { type PassGeometry, passBetween } from "./pass-geometry.ts";

/** A pass and what it bears. */
export type FoundPass = { readonly pass: PassGeometry; readonly loaded: LoadedPass };

/** More passes than this is the wrong bit for the job. Ours. */
const PASSES_MAX = 40;

/** Shares of a bound are told apart down to this. */
const SHARE_STEP = 1e-3;

/** Halvings of a setting's travel: 2⁻²⁴ of it is far below anything a hand can set. */
const HALVINGS = 24;

/**
 * The fewest roughing passes at all, each as deep as its constraints let it be: heaviness grows with the depth of a
 * pass, so going as deep as allowed each time needs the fewest. Undefined where no number of passes is light enough.
 */
export function fewestPasses(context: ConstraintContext, finishBiteMm: number): FoundPass[] | undefined {
  return passesWithin(context, finishBiteMm, 1, PASSES_MAX);
}

/** As many passes as `deepest` has, at the lowest common heaviness that still gets there. */
export function sharedOut(
  context: ConstraintContext,
  finishBiteMm: number,
  deepest: readonly FoundPass[],
): readonly FoundPass[] {
  let best = deepest;
  let tooLight = 0;
  let enough = 1;
  while (enough - tooLight > SHARE_STEP) {
    const share = (tooLight + enough) / 2;
    const shared = passesWithin(context, finishBiteMm, share, deepest.length);
    if (shared === undefined) tooLight = share;
    else {
      enough = share;
      best = shared;
    }
  }
  return best;
}

/** Passes no heavier than `share` each, if `countMax` of them get to the finishing allowance. */
function passesWithin(
  context: ConstraintContext,
  finishBiteMm: number,
  share: number,
  countMax: number,
): FoundPass[] | undefined {
  const found: FoundPass[] = [];
  let fromMm = context.setup.travelMm;
  while (fromMm > finishBiteMm) {
    if (found.length === countMax) return undefined;
    const next = deepestWithin(context, fromMm, finishBiteMm, share);
    if (next === undefined) return undefined;
    found.push(next);
    fromMm = next.pass.beforeEndMm;
  }
  return found;
}

function deepestWithin(
  context: ConstraintContext,
  fromMm: number,
  finishBiteMm: number,
  share: number,
): FoundPass | undefined {
  const whole = found(context, fromMm, finishBiteMm);
  if (whole.loaded.heaviness <= share) return whole;
  let shallowMm = fromMm;
  let deepMm = finishBiteMm;
  let best: FoundPass | undefined;
  for (let index = 0; index < HALVINGS; index += 1) {
    const toMm = (shallowMm + deepMm) / 2;
    const next = found(context, fromMm, toMm);
    if (next.loaded.heaviness <= share) {
      shallowMm = toMm;
      best = next;
    } else deepMm = toMm;
  }
  return best;
}

function found(context: ConstraintContext, fromMm: number, toMm: number): FoundPass {
  const pass = passBetween(context.solid.outline, context.setup, fromMm, toMm);
  return { pass, loaded: loadedPass(context, pass) };
}
