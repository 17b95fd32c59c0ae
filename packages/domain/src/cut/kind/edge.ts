import type { Bit } from "../../bit/bit.ts";
import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import { type Outline, outlineLengthMm } from "../../bit/outline.ts";
import { isParallel } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import { centredEnd } from "./centred.ts";
import { defineCut } from "./define.ts";
import { profileFenceMm, profileFields, profileSetup, type UsualEnd } from "./profile.ts";
import { ASSUMED_THICKNESS_MM } from "./work-fields.ts";

/** How far a bit stands past stock whose whole edge it takes away, mm. Source: common practice. */
const PAST_STOCK_MM = 2;

/** Taken off a whole edge if nobody says how much, mm: about 1/32 in. Source: common practice. */
const WHOLE_EDGE_MM = 0.8;

export const edge = defineCut({
  kind: "edge",
  meaning: "A profile along an edge.",
  fields: profileFields,
  sides: 1,
  needs: undefined,
  setup: (bit, outline, cut) => {
    const thicknessMm = cut.thicknessMm ?? ASSUMED_THICKNESS_MM;
    return profileSetup(
      bit,
      outline,
      cut,
      wholeEdge(bit, outline, thicknessMm) ?? centredIfItReaches(bit, outline, thicknessMm),
    );
  },
});

/** A plain cylinder that reaches past the stock takes the whole edge away, little of it; any other bit has a profile of its own. */
function wholeEdge({ form }: Bit, outline: Outline, thicknessMm: number): UsualEnd | undefined {
  const heightMm = thicknessMm + PAST_STOCK_MM;
  if (formPilotRadiusMm(form) !== undefined || heightMm > outlineLengthMm(outline) || !isParallel(outline)) {
    return undefined;
  }
  return { heightMm, fenceMm: Math.max(0, rimRadiusMm(outline) - WHOLE_EDGE_MM) };
}

/** A half round or a slot lies in the middle of the edge, if the bit reaches so far. */
function centredIfItReaches(bit: Bit, outline: Outline, thicknessMm: number): UsualEnd | undefined {
  const end = centredEnd(bit, outline, thicknessMm);
  if (end === undefined || end.heightMm > outlineLengthMm(outline)) return undefined;
  return { heightMm: end.heightMm, fenceMm: profileFenceMm(outline, end.fenceMm) };
}
