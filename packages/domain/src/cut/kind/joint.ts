import { formMiddleMm, formSummary } from "../../bit/form/registry.ts";
import { type Outline, outlineLengthMm } from "../../bit/outline.ts";
import { radiiInUse } from "../../bit/section.ts";
import { DomainError } from "../../quantity/fault.ts";
import { REACH_SLACK_MM } from "../base-setup.ts";
import { defineCut } from "./define.ts";
import { profileFields, profileSetup, type UsualEnd } from "./profile.ts";
import { ASSUMED_THICKNESS_MM } from "./work-fields.ts";

export const joint = defineCut({
  kind: "joint",
  meaning:
    "One half of a joint along an edge: tongue, groove, cope, stick, lock-mitre, drawer or finger joint.",
  fields: profileFields,
  sides: 1,
  needs: {
    code: "joint-form",
    isMetBy: ({ form }) => formSummary(form.kind).suits.includes("joint"),
  },
  setup: (bit, outline, cut) => {
    const middleMm = formMiddleMm(bit.form);
    if (middleMm === undefined || cut.heightMm !== undefined) return profileSetup(bit, outline, cut);
    const thicknessMm = cut.thicknessMm ?? ASSUMED_THICKNESS_MM;
    return profileSetup(bit, outline, cut, centredEnd(outline, middleMm, thicknessMm));
  },
});

/**
 * The middle of the bit at the middle of the stock, so that both halves meet with their faces flush, and the fence where the profile
 * in use is narrowest, so that no part is shortened. Source: common practice. Throws a DomainError for stock thicker than the bit joins.
 */
function centredEnd(outline: Outline, middleMm: number, thicknessMm: number): UsualEnd {
  const thickestMm = 2 * (outlineLengthMm(outline) - middleMm);
  if (thicknessMm > thickestMm + REACH_SLACK_MM) {
    const values = { given: thicknessMm, max: thickestMm };
    throw new DomainError([{ pointer: "/thicknessMm", code: "setting-out-of-reach", values }]);
  }
  const heightMm = middleMm + thicknessMm / 2;
  return { heightMm, fenceMm: radiiInUse(outline, { heightMm, fenceMm: 0, thicknessMm })?.leastMm ?? 0 };
}
