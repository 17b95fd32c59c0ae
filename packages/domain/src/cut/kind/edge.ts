import type { Bit } from "../../bit/bit.ts";
import { formPilotRadiusMm } from "../../bit/form/registry.ts";
import { type Outline, outlineLengthMm } from "../../bit/outline.ts";
import { isParallel, isUndercut } from "../../bit/shape.ts";
import { rimRadiusMm } from "../../bit/solid.ts";
import type { FieldsOf } from "../../quantity/field.ts";
import type { BaseSetup, SetupAssumption } from "../base-setup.ts";
import { bushingFields, bushingSetup } from "./bushing.ts";
import { centredEnd } from "./centred.ts";
import { defineCut } from "./define.ts";
import { profileFenceMm, profileFields, profileSetup, type UsualEnd } from "./profile.ts";
import { ASSUMED_THICKNESS_MM, SAWN_TO_WITHIN_MM } from "./work-fields.ts";

/** How far a bit stands past stock whose whole edge it takes away, mm. Source: common practice. */
const PAST_STOCK_MM = 2;

/** Taken off a whole edge if nobody says how much, mm: about 1/32 in. Source: common practice. */
const WHOLE_EDGE_MM = 0.8;

export const edge = defineCut({
  kind: "edge",
  meaning: "A profile along an edge.",
  fields: { ...profileFields, ...bushingFields },
  sides: 1,
  needs: undefined,
  setup: (bit, outline, cut) => {
    const thicknessMm = cut.thicknessMm ?? ASSUMED_THICKNESS_MM;
    if (cut.bushingDiameterMm !== undefined) return alongTemplate(bit, outline, cut, thicknessMm);
    return profileSetup(
      bit,
      outline,
      cut,
      wholeEdge(bit, outline, thicknessMm) ?? centredIfItReaches(bit, outline, thicknessMm),
    );
  },
});

/**
 * With a bushing the template decides where the cut ends, so it is walked up to by height. Where the bit comes out below, it goes on into the
 * board under the work.
 */
function alongTemplate(
  bit: Bit,
  outline: Outline,
  cut: FieldsOf<typeof profileFields & typeof bushingFields>,
  stockMm: number,
): BaseSetup {
  const overhang = isParallel(outline) && cut.fenceMm === undefined ? SAWN_TO_WITHIN_MM : undefined;
  const fenceMm = overhang === undefined ? cut.fenceMm : Math.max(0, rimRadiusMm(outline) - overhang);
  const usual = wholeEdge(bit, outline, stockMm);
  const setup = profileSetup(bit, outline, { ...cut, ...(fenceMm !== undefined && { fenceMm }) }, usual);
  const assumed: SetupAssumption[] =
    overhang === undefined
      ? []
      : [{ code: "overhang-assumed", overhangMm: rimRadiusMm(outline) - setup.fenceMm }];
  return {
    ...setup,
    approach: isUndercut(outline) ? "once" : "height",
    thicknessMm: Math.max(setup.thicknessMm, setup.heightMm),
    ...bushingSetup(cut, {
      assumed: [...setup.assumed, ...assumed],
      cutsThrough: setup.heightMm > setup.thicknessMm,
    }),
  };
}

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
