import type { Fault } from "../../quantity/fault.ts";
import { lengthMm } from "../../quantity/field.ts";
import { pilotBetween } from "./between.ts";
import { mustLeaveNeck, mustNotPass } from "./fit.ts";

/** What both bits of a cope and stick pair are described by: the groove, the rounding, and the flat between. */
export const railDimensions = {
  diameterMm: lengthMm("Largest cutting diameter.", 25, 70),
  grooveWidthMm: lengthMm("Width of the groove for the panel, and thickness of the stub tongue.", 2, 10),
  grooveDepthMm: lengthMm("Depth of the groove, and length of the stub tongue.", 3, 15),
  radiusMm: lengthMm("Radius of the rounding, and of the hollow that fits it.", 1, 12),
  landMm: lengthMm("Flat between groove and rounding, along the axis.", 0.5, 15),
  pilot: pilotBetween,
};

type RailFit = { readonly diameterMm: number; readonly grooveDepthMm: number; readonly radiusMm: number };

/** Groove and profile must leave a neck, and the rounding may be no wider than the groove is deep. */
export function railFaults({ diameterMm, grooveDepthMm, radiusMm }: RailFit): Fault[] {
  return [
    ...mustLeaveNeck("/grooveDepthMm", grooveDepthMm, diameterMm),
    ...mustNotPass("/radiusMm", radiusMm, grooveDepthMm),
  ];
}
