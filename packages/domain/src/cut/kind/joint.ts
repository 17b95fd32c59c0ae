import { formSummary } from "../../bit/form/registry.ts";
import { outlineLengthMm } from "../../bit/outline.ts";
import { DomainError } from "../../quantity/fault.ts";
import { REACH_SLACK_MM } from "../base-setup.ts";
import { centredEnd } from "./centred.ts";
import { defineCut } from "./define.ts";
import { profileFields, profileSetup } from "./profile.ts";
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
    const thicknessMm = cut.thicknessMm ?? ASSUMED_THICKNESS_MM;
    const end = cut.heightMm === undefined ? centredEnd(bit, outline, thicknessMm) : undefined;
    const reachMm = outlineLengthMm(outline);
    if (end !== undefined && end.heightMm > reachMm + REACH_SLACK_MM) {
      const values = { given: thicknessMm, max: thicknessMm - 2 * (end.heightMm - reachMm) };
      throw new DomainError([{ pointer: "/thicknessMm", code: "setting-out-of-reach", values }]);
    }
    return profileSetup(bit, outline, cut, end);
  },
});
