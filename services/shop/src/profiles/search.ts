import {
  compareRanks,
  describeNotTaken,
  formOutline,
  formPilotRadiusMm,
  formsThatWouldMake,
  type ProfileSearch,
  roundTo,
  type SearchBit,
  type SearchSetting,
  searchProfileInSteps,
  showIn,
  VERDICT_RANK,
  type WantedProfile,
} from "@rimwise/domain";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import { isUsable } from "../bits/standing.ts";
import { requireOne } from "../http/named-records.ts";
import { inTurns } from "../http/turns.ts";
import { DECIMALS } from "../plans/rounding.ts";
import { notValid } from "../problems/problem.ts";
import type { Question } from "../store/query.ts";
import { profiles } from "./kind.ts";
import { planSettings } from "./plan-settings.ts";
import { presentSetting } from "./present.ts";
import type { ProfileFound, ProfileSearchAsked } from "./search-schema.ts";
import { wantedOf } from "./shape.ts";
import type { Ways } from "./ways.ts";

/** How far from its wall something may be left if nobody says, mm: what sanding takes away. Ours. */
export const USUAL_TOLERANCE_MM = 0.2;
export const USUAL_SETUPS_MAX = 3;

/** So many bits are looked at, so many settings planned and so many refusals shown. */
const MOST_BITS = 2000;
const BITS_IN_A_PAGE = 200;
const MOST_SETTINGS = 12;
const MOST_TOGETHER = 5;
const MOST_NOT_TAKEN = 50;
const MOST_TO_BUY = 6;

/** Which bits of the rack make a profile, each setting planned if it is said with what. It lets others have their turn between bits. */
export async function searchFor(asked: ProfileSearchAsked, ways: Ways): Promise<ProfileFound> {
  const { answer } = ways;
  const { toleranceMm = USUAL_TOLERANCE_MM, setupsMax = USUAL_SETUPS_MAX } = asked;
  const wanted = await answer(wantedIn(asked));
  const rack = await fitBits(ways);
  const search = await searchRack(
    wanted,
    rack,
    { toleranceMm, setupsMax, notTakenMost: MOST_NOT_TAKEN },
    ways,
  );
  const oneSetup = search.oneSetup.slice(0, MOST_SETTINGS);
  const together = search.together.slice(0, MOST_TOGETHER);
  const planned = await planSettings(
    [...oneSetup, ...together.flat()],
    rack,
    wanted.thicknessMm,
    asked.machine,
    ways,
  );
  const shown = (setting: SearchSetting) => presentSetting(setting, planned.get(setting));
  return {
    oneSetup: oneSetup.map(shown).sort(byUse),
    together: together.map((settings) => settings.map(shown)),
    notTaken: search.notTaken.map((each) => ({
      bitId: each.bitId,
      code: each.reason.code,
      text: describeNotTaken(each, showIn("both")),
    })),
    toBuy: search.oneSetup.length > 0 ? [] : await toBuy(wanted, toleranceMm, ways),
    isComplete: search.isComplete,
    looked: rack.size,
  };
}

/** Searches a rack for a profile, giving others their turn. Throws a DomainError for a tolerance at which nothing must go. */
export async function searchRack(
  wanted: WantedProfile,
  rack: ReadonlyMap<string, BitRecord>,
  options: { readonly toleranceMm: number; readonly setupsMax: number; readonly notTakenMost: number },
  { turns }: Pick<Ways, "turns">,
): Promise<ProfileSearch> {
  const searched = [...rack.values()].map(searchBit);
  const { toleranceMm, notTakenMost } = options;
  const steps = searchProfileInSteps(wanted, searched, {
    toleranceMm,
    setupsMax: countOf(options.setupsMax),
    notTakenMost,
  });
  return inTurns(steps, turns);
}

/** Every bit of the rack that is not out of use, by its id. */
export async function fitBits({
  answer,
  turns,
}: Pick<Ways, "answer" | "turns">): Promise<ReadonlyMap<string, BitRecord>> {
  const rack = new Map<string, BitRecord>();
  let after = "";
  for (let looked = 0; looked < MOST_BITS; looked += BITS_IN_A_PAGE) {
    const page = await answer(bits.page(after, BITS_IN_A_PAGE));
    for (const bit of page) {
      if (isUsable(bit)) rack.set(bit.id, bit);
    }
    const last = page.at(-1);
    if (last === undefined || page.length < BITS_IN_A_PAGE) break;
    after = last.id;
    await turns();
  }
  return rack;
}

/** The profile that a request describes, or names in the library. */
export function* wantedIn(
  { shape, profileId }: Pick<ProfileSearchAsked, "shape" | "profileId">,
  pointer = "",
): Question<WantedProfile> {
  if (shape !== undefined && profileId === undefined) return wantedOf(shape, `${pointer}/shape`);
  if (shape === undefined && profileId !== undefined) {
    return wantedOf(
      (yield* requireOne(`${pointer}/profileId`, profileId, profiles)).shape,
      `${pointer}/profileId`,
    );
  }
  const message = shape === undefined ? "It is needed." : "The profile is given twice.";
  throw notValid([
    {
      in: "body",
      pointer: `${pointer}/shape`,
      message,
      accepted: "a shape, or the profileId of one that is kept",
    },
  ]);
}

async function toBuy(
  wanted: WantedProfile,
  toleranceMm: number,
  { turns }: Ways,
): Promise<ProfileFound["toBuy"]> {
  await turns();
  const proposals = formsThatWouldMake(wanted, toleranceMm).slice(0, MOST_TO_BUY);
  return proposals.map(({ form, isStandard, setting }) => ({
    form,
    isStandard,
    heightMm: roundTo(setting.heightMm, DECIMALS.mm),
    fenceMm: roundTo(setting.fenceMm, DECIMALS.mm),
    greatestLeftMm: roundTo(setting.greatestLeftMm, DECIMALS.mm),
  }));
}

function searchBit({ id, form }: BitRecord): SearchBit {
  return { id, outline: formOutline(form), pilotRadiusMm: formPilotRadiusMm(form) };
}

function countOf(setupsMax: number): 1 | 2 | 3 | 4 {
  return setupsMax === 1 || setupsMax === 2 || setupsMax === 3 ? setupsMax : 4;
}

/** What may be run first, then what is here, then the fewest passes, then what leaves least. */
function byUse(one: ProfileFound["oneSetup"][number], other: ProfileFound["oneSetup"][number]): number {
  const ranks = (each: ProfileFound["oneSetup"][number]) => [
    each.plan === null ? 0 : VERDICT_RANK[each.plan.verdict],
    each.elsewhere === null ? 0 : 1,
    each.plan?.passes ?? 0,
    each.greatestLeftMm,
  ];
  return compareRanks(ranks(one), ranks(other));
}
