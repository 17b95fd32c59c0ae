import type { WasteGroove } from "../../plan/waste-groove.ts";
import type { Show } from "../show.ts";

/** A groove this much narrower than wanted still takes one run, mm. Ours. */
const ONE_RUN_WITHIN_MM = 1;

/** The groove to be cut first, and with what, to follow "take out most of the wood first:". */
export function describeWasteGroove({ widthMm, depthMm, bit }: WasteGroove, show: Show): string {
  const groove = `a groove ${show.length(widthMm)} wide and ${show.length(depthMm)} deep, no wider and no deeper`;
  if (bit === undefined) return `${groove}, with a straight bit.`;
  const { name, diameterMm } = bit;
  const runs = widthMm - diameterMm > ONE_RUN_WITHIN_MM ? ", in runs side by side" : "";
  return `${groove}, with ${name} of the rack (${show.length(diameterMm)})${runs}.`;
}
