import type { SettingCorrection } from "../../plan/corrections.ts";
import type { Mounting } from "../../router/mounting.ts";
import type { Show } from "../show.ts";
import { describeFencePlace } from "./fences.ts";
import { describeHeight } from "./heights.ts";

/** The width of a cut in runs side by side is the last run's. */
const OTHERS_STAY = "Leave the other runs as they are.";

/** Nobody sets or measures closer, mm. Ours. */
const RIGHT_WITHIN_MM = 0.05;

/**
 * A correction as sentences: what is off, and what to do. Empty for what was not measured.
 * @example
 * const correction = { heightMm: 12.6, fenceMm: 2, heightChangeMm: 0.3, widthChangeMm: undefined };
 * describeCorrection(correction, "table", showIn("metric")) // → ["0.3 mm too shallow: raise the bit 0.3 mm, to 12.6 mm above the table."]
 */
export function describeCorrection(correction: SettingCorrection, mounting: Mounting, show: Show): string[] {
  const { heightChangeMm, widthChangeMm } = correction;
  const widthSentence = correction.lastRunOverMm === undefined ? fenceSentence : runSentence;
  return [
    ...(heightChangeMm === undefined ? [] : [heightSentence(correction, heightChangeMm, mounting, show)]),
    ...(widthChangeMm === undefined ? [] : [widthSentence(correction, widthChangeMm, mounting, show)]),
  ];
}

function heightSentence(
  { heightMm, cutterMm = heightMm }: SettingCorrection,
  changeMm: number,
  mounting: Mounting,
  show: Show,
): string {
  if (isRight(changeMm)) return "The depth is right: leave the height as it is.";
  const byMm = show.length(Math.abs(changeMm));
  const isOut = changeMm > 0;
  const height = describeHeight({ heightMm, cutterMm, mounting }, show);
  const verb = (mounting === "table") === isOut ? "raise" : "lower";
  const slack =
    mounting === "table" && !isOut
      ? " Go lower than that first and come up to it, to take up the slack."
      : "";
  const to = cutterMm === heightMm ? "to " : "";
  return `${byMm} too ${isOut ? "shallow" : "deep"}: ${verb} the bit ${byMm}, ${to}${height}.${slack}`;
}

function fenceSentence(
  { fenceMm, runs = 1 }: SettingCorrection,
  changeMm: number,
  mounting: Mounting,
  show: Show,
): string {
  const guide = mounting === "table" ? "fence" : "edge guide";
  if (isRight(changeMm)) return `The width is right: leave the ${guide} as it is.`;
  const { byMm, off } = offBy(changeMm, show);
  const way = changeMm > 0 ? "back" : "forward";
  const move = `move the ${guide} ${way} ${byMm}, until it stands ${describeFencePlace(fenceMm, show)}.`;
  return runs === 1 ? `${off}: ${move}` : `${off}: for the last run ${move} ${OTHERS_STAY}`;
}

/** The width of a groove that is cut in runs side by side is the last run's. */
function runSentence(
  { lastRunOverMm = 0 }: SettingCorrection,
  changeMm: number,
  mounting: Mounting,
  show: Show,
): string {
  if (isRight(changeMm)) return "The width is right: leave every run as it is.";
  const over = show.length(lastRunOverMm);
  const place =
    mounting === "table"
      ? `the fence ${over} farther from you than for the first run`
      : `the straightedge ${over} to the left of where it lay for the first run, seen along the travel`;
  return `${offBy(changeMm, show).off}: for the last run set ${place}. ${OTHERS_STAY}`;
}

function isRight(changeMm: number): boolean {
  return Math.abs(changeMm) < RIGHT_WITHIN_MM;
}

function offBy(changeMm: number, show: Show) {
  const byMm = show.length(Math.abs(changeMm));
  return { byMm, off: `${byMm} too ${changeMm > 0 ? "narrow" : "wide"}` };
}
