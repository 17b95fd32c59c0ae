import type { Bit } from "../../bit/bit.ts";
import { USUAL_BACK_CUTTER_LENGTH_MM } from "../../bit/form/cope.ts";
import { formOutline } from "../../bit/form/registry.ts";
import { outlineLengthMm } from "../../bit/outline.ts";
import { defineJoint, fenceForReachMm, formOf, mustBeThick } from "./define.ts";

/**
 * Same face down throughout. The sides of groove and stub tongue toward that face lie at one height, so that the profile closes whatever
 * the play. Source: common practice.
 */
export const copeAndStick = defineJoint({
  kind: "cope-and-stick",
  meaning: "The stub tongue and hollow on a rail's end in the groove and round of a stile's inside edge.",
  halves: [
    { name: "stick", forms: ["stick"], cut: "joint" },
    { name: "cope", forms: ["cope"], cut: "joint" },
  ],
  isTurnedOver: false,
  closes: "pushed",
  isCorner: false,
  meetAtMm: ([stick, cope]) => [
    stick.setting.heightMm - grooveToMm(stick.bit),
    cope.setting.heightMm - tongueToMm(cope.bit),
  ],
  settings: ([stick, cope], { thicknessMm }) => {
    const heightMm = outlineLengthMm(formOutline(stick.form));
    // Behind the groove some wood must be left.
    mustBeThick(thicknessMm, { above: heightMm });
    const copeHeightMm = heightMm - grooveToMm(stick) + tongueToMm(cope);
    return [
      { heightMm, fenceMm: fenceForReachMm(stick, formOf(stick, 0, ["stick"]).grooveDepthMm), thicknessMm },
      {
        heightMm: copeHeightMm,
        fenceMm: fenceForReachMm(cope, formOf(cope, 1, ["cope"]).grooveDepthMm),
        thicknessMm,
      },
    ];
  },
  meetsBy: "side",
  goesInMm: ([stick, cope]) => [
    formOf(stick.bit, 0, ["stick"]).grooveWidthMm,
    formOf(cope.bit, 1, ["cope"]).grooveWidthMm,
  ],
  touchesThroughout: true,
  findings: ([, { setting }]) => {
    const shortMm = setting.thicknessMm - setting.heightMm;
    return shortMm > 0 ? [{ code: "back-not-reached", severity: "care", shortMm }] : [];
  },
  fitBy: "bits",
});

/** From the tip to the far side of the cutter that makes the groove. */
function grooveToMm(bit: Bit): number {
  return formOf(bit, 0, ["stick"]).grooveWidthMm;
}

/** From the tip to the far side of the gap that leaves the tongue. */
function tongueToMm(bit: Bit): number {
  const { backCutterLengthMm = USUAL_BACK_CUTTER_LENGTH_MM, grooveWidthMm } = formOf(bit, 1, ["cope"]);
  return backCutterLengthMm + grooveWidthMm;
}
