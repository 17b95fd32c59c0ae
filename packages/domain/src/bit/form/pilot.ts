import type { Fault } from "../../quantity/fault.ts";
import { type LineSegment, line } from "../outline.ts";
import { optionalLengthMm } from "./define.ts";

/** Height of a common pilot bearing (3/16 in) with its screw. Source: common practice. */
export const USUAL_PILOT_HEIGHT_MM = 4.76;

/** The optional dimension every form with a bearing on its tip shares. */
export const pilotHeightMm = optionalLengthMm(
  `Height of the pilot bearing from the tip. Left out: ${USUAL_PILOT_HEIGHT_MM} mm is assumed.`,
  1,
  30,
);

/** The pilot bearing as the first segment of an outline. */
export function pilotSegment(pilotDiameterMm: number, heightMm = USUAL_PILOT_HEIGHT_MM): LineSegment {
  return line(0, heightMm, pilotDiameterMm / 2, pilotDiameterMm / 2, "pilot");
}

/** A pilot must be smaller than the bit it guides. */
export function pilotFaults(diameterMm: number, pilotDiameterMm: number | undefined): Fault[] {
  if (pilotDiameterMm === undefined || pilotDiameterMm < diameterMm) return [];
  return [{ pointer: "/pilotDiameterMm", code: "pilot-too-large", values: { pilotDiameterMm, diameterMm } }];
}

/** A profile of so many curves of radius R on each side of a pilot must fit inside the bit. */
export function profileRadiusFaults(
  diameterMm: number,
  radiusMm: number,
  pilotDiameterMm: number | undefined,
  curves = 1,
): Fault[] {
  const largestMm = (diameterMm - (pilotDiameterMm ?? 0)) / 2 / curves;
  // Dimensions are measured to a few hundredths; a sum that misses by less is the same bit.
  if (radiusMm <= largestMm + 0.05) return [];
  return [
    {
      pointer: "/radiusMm",
      code: "profile-too-large",
      values: { given: radiusMm, max: Math.max(0, largestMm) },
    },
  ];
}
