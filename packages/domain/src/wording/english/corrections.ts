import type { SettingCorrection } from "../../plan/corrections.ts";
import type { Mounting } from "../../router/mounting.ts";
import type { Show } from "../show.ts";

/** Nobody sets or measures closer, mm. Ours. */
const RIGHT_WITHIN_MM = 0.05;

/**
 * A correction as sentences: what is off, and what to do. Empty for what was not measured.
 * @example
 * const correction = { heightMm: 12.6, fenceMm: 2, heightChangeMm: 0.3, fenceBackMm: undefined };
 * describeCorrection(correction, "table", showIn("metric")) // → ["0.3 mm too shallow: raise the bit 0.3 mm, to 12.6 mm above the table."]
 */
export function describeCorrection(
  { heightMm, fenceMm, heightChangeMm, fenceBackMm }: SettingCorrection,
  mounting: Mounting,
  show: Show,
): string[] {
  return [
    ...(heightChangeMm === undefined ? [] : [heightSentence(heightMm, heightChangeMm, mounting, show)]),
    ...(fenceBackMm === undefined ? [] : [fenceSentence(fenceMm, fenceBackMm, mounting, show)]),
  ];
}

function heightSentence(heightMm: number, changeMm: number, mounting: Mounting, show: Show): string {
  if (Math.abs(changeMm) < RIGHT_WITHIN_MM) return "The depth is right: leave the height as it is.";
  const byMm = show.length(Math.abs(changeMm));
  const isOut = changeMm > 0;
  const to =
    mounting === "table"
      ? `${show.length(heightMm)} above the table`
      : `${show.length(heightMm)} below the base`;
  const verb = (mounting === "table") === isOut ? "raise" : "lower";
  const slack =
    mounting === "table" && !isOut
      ? " Go lower than that first and come up to it, to take up the slack."
      : "";
  return `${byMm} too ${isOut ? "shallow" : "deep"}: ${verb} the bit ${byMm}, to ${to}.${slack}`;
}

function fenceSentence(fenceMm: number, backMm: number, mounting: Mounting, show: Show): string {
  const guide = mounting === "table" ? "fence" : "edge guide";
  if (Math.abs(backMm) < RIGHT_WITHIN_MM) return `The width is right: leave the ${guide} as it is.`;
  const byMm = show.length(Math.abs(backMm));
  const [off, way] = backMm > 0 ? ["narrow", "back"] : ["wide", "forward"];
  const place = `${show.length(Math.abs(fenceMm))} ${fenceMm < 0 ? "behind" : "in front of"} the bit's centre`;
  return `${byMm} too ${off}: move the ${guide} ${way} ${byMm}, to ${place}.`;
}
