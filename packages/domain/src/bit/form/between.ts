import { optionalChoice } from "../../quantity/field.ts";
import type { SegmentRole } from "../outline.ts";

/** What the bits of a joint carry beside or between their cutters: shared by tongue, groove, cope and stick. */
export const pilotBetween = optionalChoice(
  "Whether a bearing runs on the work between or beside the cutters; without one that place cuts too. Default: a bearing (assumed).",
  ["bearing", "none"],
);

type PilotBetween = (typeof pilotBetween.names)[number] | undefined;

/** Role of the part between the cutters. */
export function roleBetween(pilot: PilotBetween): SegmentRole {
  return pilot === "none" ? "edge" : "pilot";
}

/** Radius in mm that a bearing between the cutters runs on, or undefined without one. */
export function pilotRadiusBetweenMm(
  pilot: PilotBetween,
  diameterMm: number,
  depthMm: number,
): number | undefined {
  return pilot === "none" ? undefined : diameterMm / 2 - depthMm;
}
