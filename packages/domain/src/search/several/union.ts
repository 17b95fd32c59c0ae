import type { BitView } from "../bit-view.ts";
import { greatestDifference } from "../curve.ts";
import { type Fit, fitAt } from "../fit.ts";
import { greatestLeft, removedBy } from "../left.ts";
import { depthAtMm } from "../piece.ts";
import { type SearchSetting, settingOf } from "../setting.ts";
import type { Target } from "../target.ts";
import { reachMm } from "./candidate.ts";
import type { Witness } from "./witness.ts";

export type Cut = { readonly view: BitView; readonly fit: Fit };

/** What is short by less is rounding, mm. */
const ROUNDING_MM = 1e-9;

/** Where a miss lies on a step, it is looked for so far beside it, mm. */
const BESIDE_MM = [0, 1e-6, -1e-6, 1e-4, -1e-4] as const;

/** How far the end of a window is looked for, and how often it is halved toward, mm. */
const WINDOW_MM = 4;
const HALVINGS = 22;

/** Whether cuts together leave nothing that must go: the exact depth of all of them against the depth needed. */
export function isMadeBy(target: Target, cuts: readonly Cut[]): boolean {
  return shortMm(target, cuts).mm <= ROUNDING_MM;
}

/** A place that these cuts miss, if they miss one that is wider than rounding. */
export function missedBy(target: Target, cuts: readonly Cut[]): Witness[] {
  const { atMm } = shortMm(target, cuts);
  const places = BESIDE_MM.flatMap((besideMm) => placesAt(target, atMm + besideMm));
  const missed = places.find(({ zMm, neededMm }) =>
    cuts.every(({ view, fit }) => reachMm(view, fit, zMm) < neededMm - ROUNDING_MM),
  );
  return missed === undefined ? [] : [missed];
}

/**
 * Cuts as settings, the one that takes most first. What a setting leaves is what is left after it and those before; its heights are those that stay
 * within tolerance with the others as they are.
 */
export function settingsOf(target: Target, cuts: readonly Cut[], thicknessMm: number): SearchSetting[] {
  return cuts.map(({ view, fit }, index) => {
    const left = greatestLeft(target.limit, removedBy(cuts.slice(0, index + 1), target.topMm));
    const others = cuts.filter((_, at) => at !== index);
    const window = {
      fromMm: endMm(target, others, view, fit, -WINDOW_MM),
      toMm: endMm(target, others, view, fit, WINDOW_MM),
    };
    return settingOf({ view, fit, left, window }, target, thicknessMm);
  });
}

function shortMm({ need, topMm }: Target, cuts: readonly Cut[]) {
  return greatestDifference(need, 0, removedBy(cuts, topMm));
}

function placesAt({ need }: Target, zMm: number): Witness[] {
  const on = need.filter((piece) => zMm >= piece.fromMm && zMm <= piece.toMm);
  return on.map((piece) => ({ zMm, neededMm: depthAtMm(piece, zMm) }));
}

/** The last raise toward `byMm` away at which all still make the target; not looked for farther than that. */
function endMm(target: Target, others: readonly Cut[], view: BitView, fit: Fit, byMm: number): number {
  const isGood = (raiseMm: number) => {
    const isInReach = raiseMm >= view.raiseFromMm && raiseMm <= view.raiseToMm;
    return isInReach && isMadeBy(target, [...others, { view, fit: fitAt(view, target, raiseMm) }]);
  };
  let goodMm = fit.raiseMm;
  let badMm = fit.raiseMm + byMm;
  if (isGood(badMm)) return badMm;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middleMm = (goodMm + badMm) / 2;
    if (isGood(middleMm)) goodMm = middleMm;
    else badMm = middleMm;
  }
  return goodMm;
}
