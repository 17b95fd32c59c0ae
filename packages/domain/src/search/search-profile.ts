import { compareRanks } from "../quantity/compare-ranks.ts";
import { allOf, type Steps } from "../quantity/steps.ts";
import type { SearchBit } from "./bit-view.ts";
import type { NotTaken, Refused } from "./not-taken.ts";
import { marked, type OneBit, searchOneBit } from "./one-bit.ts";
import type { SearchSetting } from "./setting.ts";
import { type Several, searchSeveral } from "./several/several.ts";
import { targetsOf } from "./target.ts";
import type { WantedProfile } from "./wanted.ts";

/** Which bits of a rack make a profile, and why the others do not. */
export type ProfileSearch = {
  /** Settings that make it at once, those that leave least first: one for each bit and presentation. */
  readonly oneSetup: readonly SearchSetting[];
  /** The fewest set-ups that make it together, best first. Empty if one makes it alone, or none was found. */
  readonly together: readonly (readonly SearchSetting[])[];
  /** Those that came nearest first. */
  readonly notTaken: readonly NotTaken[];
  /** False if a bound cut the search short, so that more may be possible. */
  readonly isComplete: boolean;
};

export type SearchOptions = {
  /** How far from the wanted wall something may be left. */
  readonly toleranceMm: number;
  readonly setupsMax: 1 | 2 | 3 | 4;
  /** So many of the bits that were not taken are explained, those that came nearest. Default: all of them. */
  readonly notTakenMost?: number;
};

/**
 * Which bits of a rack make a wanted profile: by themselves, or if none does, the fewest of them together. What must stay is
 * never cut into, and what is left to remove lies within `toleranceMm` of it, measured to the nearest. Throws a DomainError if
 * the tolerance is so wide that nothing must go.
 *
 * Each bit is looked at where a corner or a centre of its outline lies on one of the wall and, if it does not fit there,
 * between these: a range of heights wider than a ten-thousandth of a millimetre is found. In several set-ups it is taken where
 * corners and centres lie on each other, and where it begins and ends to make a whole sloping or round piece of the wall. Flat
 * and standing set-ups are mixed if both show the whole wall. `isComplete` says whether these were all looked at.
 * @example
 * const corners = [[9, 6], [0, 6]].map(([xMm, zMm]) => ({ kind: "line", xMm, zMm }));
 * const wanted = wantedFrom({ thicknessMm: 19, start: { xMm: 9, zMm: 0 }, segments: corners });
 * const outline = formOutline({ kind: "straight", diameterMm: 20, cuttingLengthMm: 7 });
 * const bits = [{ id: "straight", outline, pilotRadiusMm: undefined }];
 * searchProfile(wanted, bits, { toleranceMm: 0.1, setupsMax: 1 }).oneSetup // → [{ bitId: "straight", heightMm: 6, fenceMm: 1 }]
 */
export function searchProfile(
  wanted: WantedProfile,
  bits: readonly SearchBit[],
  options: SearchOptions,
): ProfileSearch {
  return allOf(searchProfileInSteps(wanted, bits, options));
}

/**
 * The same search in short steps, for whoever must let others have their turn between them: a large rack takes a good part of a
 * second. Throws as `searchProfile` does, at the first step.
 * @example
 * const corners = [[9, 6], [0, 6]].map(([xMm, zMm]) => ({ kind: "line", xMm, zMm }));
 * const wanted = wantedFrom({ thicknessMm: 19, start: { xMm: 9, zMm: 0 }, segments: corners });
 * const steps = searchProfileInSteps(wanted, [], { toleranceMm: 0.1, setupsMax: 1 });
 * steps.next() // → { done: true, value: { oneSetup: [], isComplete: true } }
 */
export function* searchProfileInSteps(
  wanted: WantedProfile,
  bits: readonly SearchBit[],
  { toleranceMm, setupsMax, notTakenMost = bits.length }: SearchOptions,
): Steps<ProfileSearch> {
  const targets = targetsOf(wanted, toleranceMm).map(marked);
  const each: OneBit[] = [];
  for (const bit of bits) {
    each.push(yield* searchOneBit(bit, targets, wanted.thicknessMm));
  }
  const oneSetup = each
    .flatMap(({ settings }) => settings)
    .sort((one, other) => one.greatestLeftMm - other.greatestLeftMm);
  const several =
    oneSetup.length > 0 ? undefined : yield* searchSeveral(bits, targets, setupsMax, wanted.thicknessMm);
  const refused = each
    .flatMap(({ refused }) => refused ?? [])
    .sort((one, other) => compareRanks(one.ranks, other.ranks));
  return {
    oneSetup,
    together: several?.together ?? [],
    notTaken: yield* explained(refused, several, notTakenMost),
    isComplete: each.every(({ isComplete }) => isComplete) && (several?.isComplete ?? true),
  };
}

/** The reasons of the bits that are in none of the answers; those that another bit stands in for say so. */
function* explained(
  refused: readonly Refused[],
  several: Several | undefined,
  most: number,
): Steps<NotTaken[]> {
  const used = new Set(several?.together.flatMap((settings) => settings.map(({ bitId }) => bitId)));
  const byBit = new Map(several?.dominated.map((each) => [each.bitId, each]));
  const notTaken: NotTaken[] = [];
  for (const { bitId, explain } of refused) {
    if (notTaken.length === most) break;
    if (used.has(bitId)) continue;
    const other = byBit.get(bitId);
    const reason = { code: "dominated", byBitId: other?.byBitId ?? "" } as const;
    notTaken.push(other === undefined ? explain() : { bitId, presentation: other.view.presentation, reason });
    yield;
  }
  return notTaken;
}
