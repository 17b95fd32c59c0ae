import { isInside } from "../cut/course.ts";
import { SAWN_TO_WITHIN_MM } from "../cut/kind/work-fields.ts";
import { defineGuide, type GuideContext, handheldDirection, isClosedToFences } from "./define.ts";
import type { FeedDirection } from "./direction.ts";

/** A bearing that runs on a template, for a cut that trims to one. Source: common practice. */
export const template = defineGuide({
  name: "template",
  isSet: false,
  runsOnWork: false,
  serves: ({ cut }) => cut.kind === "trim",
  direction,
  findings: ({ setup }) => {
    const { template: on } = setup;
    if (on === undefined || on.thicknessMm >= on.bearingHeightMm) return [];
    const values = { templateThicknessMm: on.thicknessMm, leastMm: on.bearingHeightMm };
    return [{ code: "template-too-thin", severity: "refuse", ...values }];
  },
  steps: ({ setup: { template: on, heightMm, thicknessMm, fenceMm, greatestRadiusMm } }) => {
    if (on === undefined) return [];
    // The template of a tip bearing lies past the work, and covers that much of the bit.
    const coveredMm = thicknessMm + (on.bearing === "tip" ? on.thicknessMm : 0);
    const standsOutMm = Math.max(0, heightMm - coveredMm);
    const { bearing, thicknessMm: templateThicknessMm } = on;
    const sawFirst = greatestRadiusMm - fenceMm > SAWN_TO_WITHIN_MM;
    return [{ code: "fix-template", bearing, sawFirst, templateThicknessMm, standsOutMm }];
  },
  says: (context) =>
    context.mounting === "table"
      ? ["template-fixed", "bearing-on-template", "starting-pin"]
      : ["template-fixed", "bearing-on-template"],
});

function direction(context: GuideContext): FeedDirection {
  if (context.mounting === "handheld") return handheldDirection(context);
  if (isInside(context.cut)) return "work-around-opening";
  return isClosedToFences(context) ? "work-around-pin" : "work-right-to-left";
}
