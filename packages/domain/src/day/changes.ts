import { roundTo } from "../quantity/round.ts";
import type { Change, ChangeoverTimes, DaySetup } from "./day.ts";

/** Settings that agree to so many decimals of a millimetre are one setting: nobody sets closer. Ours. */
const SETTING_DECIMALS = 2;

/** Times are added in whole thousandths of a minute, so that sums in another order are the same sum. */
const PER_MINUTE = 1000;

/**
 * What must be changed at a station that stands as `last` left it, undefined if nothing is set up there yet. A new bit asks for its
 * height and fence again, and every new setting for a test piece. Source: common practice.
 */
export function changesAtStation(
  last: DaySetup | undefined,
  next: DaySetup,
  times: ChangeoverTimes,
): Change[] {
  const { bitId, heightMm, dial } = next;
  const isNewBit = last?.bitId !== bitId;
  const settings: Change[] = [];
  if (isNewBit || !isSameSetting(last?.heightMm, heightMm)) {
    settings.push({ code: "height", heightMm, minutes: times.heightSettingMinutes });
  }
  settings.push(...guideChanges(last, next, times));
  const changes: Change[] = isNewBit ? [{ code: "bit", bitId, minutes: times.bitChangeMinutes }] : [];
  if (dial !== undefined && last?.dial !== dial) {
    changes.push({ code: "dial", dial, minutes: times.dialSettingMinutes });
  }
  changes.push(...settings);
  // A new speed alone moves no edge.
  if (settings.length > 0) changes.push({ code: "test-piece", minutes: times.testPieceMinutes });
  return changes;
}

function guideChanges(last: DaySetup | undefined, next: DaySetup, times: ChangeoverTimes): Change[] {
  const { bitId, guide, fenceMm } = next;
  const isNewGuide = last === undefined || last.guide !== guide;
  const minutes = times.fenceSettingMinutes;
  if (fenceMm === undefined) {
    return guide !== undefined && isNewGuide ? [{ code: "guide", guide, minutes }] : [];
  }
  const stays = !isNewGuide && last?.bitId === bitId && isSameSetting(last?.fenceMm, fenceMm);
  return stays ? [] : [{ code: "fence", fenceMm, guide, minutes }];
}

/** How long changes take, in whole thousandths of a minute. */
export function ticksOf(changes: readonly Change[]): number {
  return changes.reduce((sum, { minutes }) => sum + ticksIn(minutes), 0);
}

export function ticksIn(minutes: number): number {
  return Math.round(minutes * PER_MINUTE);
}

export function minutesIn(ticks: number): number {
  return ticks / PER_MINUTE;
}

function isSameSetting(oneMm: number | undefined, otherMm: number): boolean {
  return oneMm !== undefined && roundTo(oneMm, SETTING_DECIMALS) === roundTo(otherMm, SETTING_DECIMALS);
}
