import type { Fault } from "../../quantity/fault.ts";
import { optionalLengthMm } from "../../quantity/field.ts";
import { type LineSegment, line } from "../outline.ts";
import { MEASURED_SLACK_MM } from "./fit.ts";

/** Height of a common pilot bearing (3/16 in) with its screw. Source: common practice. */
export const USUAL_PILOT_HEIGHT_MM = 4.76;

/** The thinnest pilot made: a solid pin of about 5/64 in. Source: common practice. */
const THINNEST_PILOT_MM = 2;

/** The optional dimension every form with a bearing shares. */
export const pilotHeightMm = optionalLengthMm(
  `Height of the pilot bearing along the axis. Default: ${USUAL_PILOT_HEIGHT_MM} mm (assumed).`,
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

/**
 * A profile of so many curves of radius R on each side of a pilot must fit inside the bit. If the pilot's
 * diameter follows from the profile, what is left must still be a pilot.
 */
export function profileRadiusFaults(
  diameterMm: number,
  radiusMm: number,
  pilotDiameterMm: number | undefined,
  curves = 1,
): Fault[] {
  const largestMm = Math.max(0, (diameterMm - (pilotDiameterMm ?? THINNEST_PILOT_MM)) / 2 / curves);
  const slackMm = pilotDiameterMm === undefined ? 0 : MEASURED_SLACK_MM;
  if (radiusMm <= largestMm + slackMm) return [];
  return [{ pointer: "/radiusMm", code: "profile-too-large", values: { given: radiusMm, max: largestMm } }];
}

/** The profile's radius in mm; less by what measuring missed if the curves would reach inside the pilot. */
export function fittedRadiusMm(
  diameterMm: number,
  radiusMm: number,
  pilotDiameterMm: number | undefined,
  curves = 1,
): number {
  if (pilotDiameterMm === undefined) return radiusMm;
  return Math.min(radiusMm, (diameterMm - pilotDiameterMm) / 2 / curves);
}

/** Diameter in mm of the pilot of a profile: the one given, or the one that meets the curves. */
export function profilePilotDiameterMm(
  diameterMm: number,
  radiusMm: number,
  pilotDiameterMm: number | undefined,
  curves = 1,
): number {
  return pilotDiameterMm ?? diameterMm - 2 * curves * radiusMm;
}
