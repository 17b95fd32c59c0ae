import type { SearchBit } from "./bit-view.ts";
import type { NotTaken } from "./not-taken.ts";
import { marked, searchOneBit } from "./one-bit.ts";
import type { SearchSetting } from "./setting.ts";
import { targetsOf } from "./target.ts";
import type { WantedProfile } from "./wanted.ts";

/** Which bits of a rack make a profile, and why the others do not. */
export type ProfileSearch = {
  /** Settings that make it at once, those that leave least first: one for each bit and presentation. */
  readonly oneSetup: readonly SearchSetting[];
  /** The fewest set-ups that make it together, best first. Empty if one makes it alone, or none was found. */
  readonly together: readonly (readonly SearchSetting[])[];
  readonly notTaken: readonly NotTaken[];
  /** False if a bound cut the search short, so that more may be possible. */
  readonly isComplete: boolean;
};

export type SearchOptions = {
  /** How far from the wanted wall something may be left. */
  readonly toleranceMm: number;
  readonly setupsMax: 1 | 2 | 3 | 4;
};

/**
 * Which bits of a rack make a wanted profile.
 */
export function searchProfile(
  wanted: WantedProfile,
  bits: readonly SearchBit[],
  { toleranceMm }: SearchOptions,
): ProfileSearch {
  const targets = targetsOf(wanted, toleranceMm).map(marked);
  const each = bits.map((bit) => searchOneBit(bit, targets, wanted.thicknessMm));
  const oneSetup = each.flatMap(({ settings }) => settings);
  return {
    oneSetup: [...oneSetup].sort((one, other) => one.greatestLeftMm - other.greatestLeftMm),
    together: [],
    notTaken: each.flatMap(({ notTaken }) => (notTaken === undefined ? [] : [notTaken])),
    isComplete: each.every(({ isComplete }) => isComplete),
  };
}
