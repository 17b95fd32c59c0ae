import type { BitView } from "../bit-view.ts";
import { greatestDifference } from "../curve.ts";
import { fitAt } from "../fit.ts";
import { greatestLeft, type Left, removedBy } from "../left.ts";
import { depthAtMm } from "../piece.ts";
import { placeOf, type SearchSetting, settingOf } from "../setting.ts";
import type { Target } from "../target.ts";
import { type Cut, reachMm } from "./candidate.ts";
import { cellLeft, placeLeft, removedByBoth, removedFromEdge } from "./mixed.ts";
import { seenIn, type Witness } from "./witness.ts";

/** What is short by less is rounding, mm. */
const ROUNDING_MM = 1e-9;

/** Where a miss lies on a step, it is looked for so far beside it, mm. */
const BESIDE_MM = [0, 1e-6, -1e-6, 1e-4, -1e-4] as const;

/** How far the end of a window is looked for, and how often it is halved toward, mm. */
const WINDOW_MM = 4;
const HALVINGS = 22;

/** A wanted profile with its targets: the first is the one that what is left is measured in. */
export type Wanted = { readonly targets: readonly Target[]; readonly thicknessMm: number };

/** Whether cuts together leave nothing that must go: the exact depth of all of them against the depth needed. */
export function isMadeBy(wanted: Wanted, cuts: readonly Cut[]): boolean {
  const target = onlyTarget(cuts);
  if (target !== undefined) return shortest(target, cuts).mm <= ROUNDING_MM;
  const both = bothKinds(wanted, cuts);
  return both !== undefined && cellLeft(both.flat, both.removed) === undefined;
}

/** Places that these cuts miss, if they miss one that is wider than rounding. */
export function missedBy(wanted: Wanted, cuts: readonly Cut[]): Witness[] {
  return missedPlaces(wanted, cuts)
    .filter((place) =>
      cuts.every((cut) => {
        const { heightMm, depthMm } = seenIn(cut.target.wall, place, wanted.thicknessMm);
        return reachMm(cut, heightMm) < depthMm - ROUNDING_MM;
      }),
    )
    .slice(0, 1);
}

/** What cuts together leave farthest from the wall, in the frame of one target. */
export function leftByAll(
  wanted: Wanted,
  cuts: readonly Cut[],
): { readonly left: Left; readonly target: Target | undefined } {
  const target = onlyTarget(cuts);
  if (target !== undefined)
    return { target, left: greatestLeft(target.limit, removedBy(cuts, target.topMm)) };
  const both = bothKinds(wanted, cuts);
  if (both === undefined) return { target: undefined, left: { mm: Infinity, heightMm: 0, depthMm: 0 } };
  return { target: both.flat, left: greatestLeft(both.flat.limit, removedFromEdge(both.flat, both.removed)) };
}

/**
 * Cuts as settings, the one that takes most first. What a setting leaves is what is left after it and those before; its heights
 * are those that stay within tolerance with the others as they are.
 */
export function settingsOf(wanted: Wanted, cuts: readonly Cut[]): SearchSetting[] {
  return cuts.map((cut, index) => {
    const { view, fit, target } = cut;
    const { left, target: measured = target } = leftByAll(wanted, cuts.slice(0, index + 1));
    const others = cuts.filter((_, at) => at !== index);
    const window = {
      fromMm: endMm(wanted, others, cut, -WINDOW_MM),
      toMm: endMm(wanted, others, cut, WINDOW_MM),
    };
    const setting = settingOf({ view, fit, left, window }, target, wanted.thicknessMm);
    return { ...setting, leftAt: placeOf(measured.wall, wanted.thicknessMm, left) };
  });
}

/** The target of all of these cuts, if it is one. */
function onlyTarget(cuts: readonly Cut[]): Target | undefined {
  const [first] = cuts;
  return cuts.every(({ target }) => target === first?.target) ? first?.target : undefined;
}

function bothKinds({ targets, thicknessMm }: Wanted, cuts: readonly Cut[]) {
  const flat = targets.find(({ wall }) => wall.work === "flat");
  const standing = targets.find(({ wall }) => wall.work === "standing");
  return flat && standing && { flat, removed: removedByBoth(flat, standing, cuts, thicknessMm) };
}

function shortest({ need, topMm }: Target, cuts: readonly Cut[]) {
  return greatestDifference(need, 0, removedBy(cuts, topMm));
}

function missedPlaces(wanted: Wanted, cuts: readonly Cut[]): Witness[] {
  const target = onlyTarget(cuts);
  if (target === undefined) {
    const both = bothKinds(wanted, cuts);
    const cell = both && cellLeft(both.flat, both.removed);
    return both && cell ? placeLeft(both.flat.need, both.removed, cell) : [];
  }
  const { atMm } = shortest(target, cuts);
  return BESIDE_MM.flatMap((besideMm) => {
    const heightMm = atMm + besideMm;
    const on = target.need.filter((piece) => heightMm >= piece.fromMm && heightMm <= piece.toMm);
    return on.map((piece) =>
      placeOf(target.wall, wanted.thicknessMm, { heightMm, depthMm: depthAtMm(piece, heightMm) }),
    );
  });
}

/** The last raise toward `byMm` away at which all still make the profile; not looked for farther than that. */
function endMm(wanted: Wanted, others: readonly Cut[], { view, fit, target }: Cut, byMm: number): number {
  const isGood = (raiseMm: number) =>
    isInReach(view, raiseMm) &&
    isMadeBy(wanted, [...others, { view, fit: fitAt(view, target, raiseMm), target }]);
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

function isInReach({ raiseFromMm, raiseToMm }: BitView, raiseMm: number): boolean {
  return raiseMm >= raiseFromMm && raiseMm <= raiseToMm;
}
