import { describePresentation, roundTo, type SearchSetting, showIn } from "@rimwise/domain";
import { DECIMALS } from "../plans/rounding.ts";
import type { PlannedSetting } from "./plan-settings.ts";
import type { ProfileSettingShown } from "./search-schema.ts";

/** A setting that was found, as it is read at the machine. */
export function presentSetting(
  setting: SearchSetting,
  known: PlannedSetting | undefined,
): ProfileSettingShown {
  const { bitId, presentation, heightMm, fenceMm, heightsMm, greatestLeftMm, leftAt } = setting;
  const { length } = showIn("both");
  const name = known?.bit.name ?? bitId;
  const mm = (value: number) => roundTo(value, DECIMALS.mm);
  return {
    bitId,
    name,
    work: presentation.work,
    face: presentation.face,
    heightMm: mm(heightMm),
    fenceMm: mm(fenceMm),
    heightFromMm: mm(heightsMm.fromMm),
    heightToMm: mm(heightsMm.toMm),
    greatestLeftMm: mm(greatestLeftMm),
    leftAt: { xMm: mm(leftAt.xMm), zMm: mm(leftAt.zMm) },
    elsewhere: known?.elsewhere ?? null,
    plan: known?.plan ?? null,
    text: `${name}: ${length(heightMm)} out of the table, the fence ${length(fenceMm)} in front of its axis, the work ${describePresentation(presentation)}. Then ${length(greatestLeftMm)} is left at most.`,
  };
}
