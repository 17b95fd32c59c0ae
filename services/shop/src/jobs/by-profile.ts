import type { SearchSetting } from "@rimwise/domain";
import type { BitRecord } from "../bits/schema.ts";
import { notValid } from "../problems/problem.ts";
import { searchRack, USUAL_TOLERANCE_MM, wantedIn } from "../profiles/search.ts";
import type { Ways } from "../profiles/ways.ts";
import type { FindBit } from "./candidates.ts";
import type { WantedByProfile } from "./cut-schema.ts";
import type { Candidate } from "./planned.ts";

/** The thickness of a part and of its profile are one, as far as a shop measures, mm. Ours. */
const SAME_THICKNESS_MM = 0.5;

/** So many bits that make a profile alone are planned, those that leave least first. */
const MOST_CANDIDATES = 6;

const USUAL_SETUPS_MAX = 3;

/** What a profile is cut in, and where in the job's body it is asked for. */
export type ProfilePlace = { readonly thicknessMm: number; readonly pointer: string };

/**
 * The bits of a rack that make a profile: one group of them if each makes it alone, else a group for each set-up of the fewest that make it
 * together. One empty group if none do.
 */
export async function groupsByProfile(
  wanted: WantedByProfile,
  { thicknessMm, pointer }: ProfilePlace,
  rack: ReadonlyMap<string, BitRecord>,
  find: FindBit,
  { answer, turns }: Pick<Ways, "answer" | "turns">,
): Promise<Candidate[][]> {
  const profile = await answer(wantedIn(wanted, `${pointer}/wanted`));
  if (Math.abs(profile.thicknessMm - thicknessMm) > SAME_THICKNESS_MM) {
    const message = "The profile is for stock of another thickness.";
    const accepted = `a profile for the part's ${thicknessMm} mm`;
    throw notValid([{ in: "body", pointer: `${pointer}/wanted/shape`, message, accepted }]);
  }
  const { toleranceMm = USUAL_TOLERANCE_MM, setupsMax = USUAL_SETUPS_MAX } = wanted;
  const { oneSetup, together } = await searchRack(
    profile,
    rack,
    { toleranceMm, setupsMax, notTakenMost: 0 },
    { turns },
  );
  const [fewest] = together;
  if (oneSetup.length === 0 && fewest !== undefined) {
    return Promise.all(fewest.map((setting) => candidatesOf([setting])));
  }
  return [await candidatesOf(oneSetup.slice(0, MOST_CANDIDATES))];

  async function candidatesOf(settings: readonly SearchSetting[]): Promise<Candidate[]> {
    const candidates: Candidate[] = [];
    for (const setting of settings) {
      const bit = await answer(find(setting.bitId));
      if (bit !== undefined) candidates.push({ bit, setting });
    }
    return candidates;
  }
}
