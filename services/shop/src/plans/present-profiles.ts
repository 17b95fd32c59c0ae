import { type Profile, type ProfilePoint, roundTo } from "@rimwise/domain";
import type { PassProfileAnswer } from "./profile-schema.ts";

/** A polygon for drawing needs no more than a thousandth of a millimetre. */
const DECIMALS = 3;

/** Profiles as they go over the wire, numbered as their passes are. */
export function presentProfiles(profiles: readonly Profile[]): PassProfileAnswer[] {
  return profiles.map((profile, index) => ({
    pass: index + 1,
    pieces: profile.map(({ boundary, holes }) => ({
      boundary: boundary.map(presentPoint),
      holes: holes.map((hole) => hole.map(presentPoint)),
    })),
  }));
}

function presentPoint({ xMm, zMm }: ProfilePoint): ProfilePoint {
  return { xMm: roundTo(xMm, DECIMALS), zMm: roundTo(zMm, DECIMALS) };
}
