import type { Fault } from "../../quantity/fault.ts";
import { lengthMm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";

/** What both bits of a cope and stick pair are described by: the groove, the rounding, and the flat between. */
export const railDimensions = {
  diameterMm: lengthMm("Largest cutting diameter.", 25, 70),
  grooveWidthMm: lengthMm("Width of the groove for the panel, and thickness of the stub tongue.", 2, 10),
  grooveDepthMm: lengthMm("Depth of the groove, and length of the stub tongue.", 3, 15),
  radiusMm: lengthMm("Radius of the rounding, and of the hollow that fits it.", 1, 12),
  landMm: lengthMm("Flat between groove and rounding.", 0.5, 15),
};

/** Groove and profile must leave some of the bit's radius, and the profile must fit beside the groove. */
export function railFaults({
  diameterMm,
  grooveDepthMm,
  radiusMm,
}: { readonly [Name in keyof typeof railDimensions]: number }): Fault[] {
  const faults = mustStayUnder("/grooveDepthMm", grooveDepthMm, diameterMm / 2);
  if (radiusMm <= grooveDepthMm) return faults;
  return [
    ...faults,
    { pointer: "/radiusMm", code: "profile-too-large", values: { given: radiusMm, max: grooveDepthMm } },
  ];
}
