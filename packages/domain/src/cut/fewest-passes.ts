import { type ConstraintContext, type LoadedPass, loadedPass } from "./constraints.ts";
import { type PassGeometry, passBetween } from "./pass-geometry.ts";
import { lighterShortMm } from "./short-of-end.ts";

/** A pass and what it bears. */
export type FoundPass = { readonly pass: PassGeometry; readonly loaded: LoadedPass };

/** From how far short of the end to how far the roughing passes go, mm. */
export type Roughing = { readonly startMm: number; readonly finishBiteMm: number };

/** More passes than this is the wrong bit for the job. Ours. */
export const PASSES_MAX = 20;

/** Shares of a bound are distinguished down to this. */
const SHARE_STEP = 1e-2;

/** A setting is found this closely, mm: far below anything a hand can set. */
const SETTING_STEP_MM = 1e-4;
/** A pass that moves the setting less than this does not move it, mm. */
export const LEAST_BITE_MM = 1e-6;
const STEPS_MAX = 60;

/** A pass this near under its share is as deep as it needs to be. */
const NEAR_ENOUGH = 1e-6;

/** A guess stays this share of the bracket away from its ends. */
const EDGE_SHARE = 0.02;

/**
 * The fewest roughing passes at all, each as deep as its constraints let it be: heaviness grows with the depth of a
 * pass, so going as deep as allowed each time needs the fewest. Undefined if no number of passes is light enough.
 */
export function fewestPasses(context: ConstraintContext, travel: Roughing): FoundPass[] | undefined {
  return passesWithin(context, travel, 1, PASSES_MAX);
}

/** As many passes as `deepest` has, at the lowest common heaviness that still gets there. */
export function sharedOut(
  context: ConstraintContext,
  travel: Roughing,
  deepest: readonly FoundPass[],
): readonly FoundPass[] {
  let best = deepest;
  let tooLight = 0;
  let enough = 1;
  while (enough - tooLight > SHARE_STEP) {
    const share = (tooLight + enough) / 2;
    const shared = passesWithin(context, travel, share, deepest.length);
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
  { startMm, finishBiteMm }: Roughing,
  share: number,
  countMax: number,
): FoundPass[] | undefined {
  const found: FoundPass[] = [];
  let fromMm = startMm;
  while (fromMm > finishBiteMm + LEAST_BITE_MM) {
    if (found.length === countMax) return undefined;
    const next = deepestWithin(context, fromMm, finishBiteMm, share);
    if (next === undefined) return undefined;
    found.push(next);
    fromMm = next.pass.beforeEndMm;
  }
  return found;
}

/** The deepest pass no heavier than `share` whose setting a person can make; undefined if none moves the setting at all. */
function deepestWithin(
  context: ConstraintContext,
  fromMm: number,
  finishBiteMm: number,
  share: number,
): FoundPass | undefined {
  const whole = found(context, fromMm, finishBiteMm);
  if (whole.loaded.heaviness <= share) return whole;
  const deepest = deepestBetween(context, fromMm, whole, share);
  if (deepest === undefined || context.setIn === undefined) return deepest;
  const toMm = lighterShortMm(context.setup, deepest.pass.beforeEndMm, context.setIn);
  return fromMm - toMm < LEAST_BITE_MM ? undefined : found(context, fromMm, toMm);
}

function deepestBetween(
  context: ConstraintContext,
  fromMm: number,
  whole: FoundPass,
  share: number,
): FoundPass | undefined {
  // Illinois' false position between a depth that is light enough and one that is not; both ends close in.
  let shallow = { toMm: fromMm, over: -share };
  let deep = { toMm: whole.pass.beforeEndMm, over: whole.loaded.heaviness - share };
  let stayed: "shallow" | "deep" | undefined;
  let best: FoundPass | undefined;
  for (let index = 0; index < STEPS_MAX && shallow.toMm - deep.toMm > SETTING_STEP_MM; index += 1) {
    const span = shallow.toMm - deep.toMm;
    const guess = shallow.toMm + (span * shallow.over) / (deep.over - shallow.over);
    // Kept off both ends, so that the bracket always shrinks.
    const toMm = Math.min(shallow.toMm - EDGE_SHARE * span, Math.max(deep.toMm + EDGE_SHARE * span, guess));
    const next = found(context, fromMm, toMm);
    const over = next.loaded.heaviness - share;
    if (over <= 0) {
      // An end that stays twice is believed half as much, or the other would creep.
      if (stayed === "deep") deep = { toMm: deep.toMm, over: deep.over / 2 };
      shallow = { toMm, over };
      stayed = "deep";
      best = next;
      if (over > -NEAR_ENOUGH) break;
    } else {
      if (stayed === "shallow") shallow = { toMm: shallow.toMm, over: shallow.over / 2 };
      deep = { toMm, over };
      stayed = "shallow";
    }
  }
  return best;
}

/** The pass between two settings, with what it bears. */
export function found(context: ConstraintContext, fromMm: number, toMm: number): FoundPass {
  const pass = passBetween(context.solid.outline, context.setup, fromMm, toMm);
  return { pass, loaded: loadedPass(context, pass) };
}
