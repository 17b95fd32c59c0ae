import { optionalLengthMm } from "../../quantity/field.ts";
import { arc, line } from "../outline.ts";
import { pilotRadiusBetweenMm, roleBetween } from "./between.ts";
import { defineForm } from "./define.ts";
import { railDimensions, railFaults } from "./rail.ts";
import { wholeProfile } from "./usual-cut.ts";

/** Length of the cutter at the tip of a common cope bit (1/4 in). Source: common practice. */
export const USUAL_BACK_CUTTER_LENGTH_MM = 6.35;

export const cope = defineForm({
  kind: "cope",
  title: "Cope (of a cope and stick pair)",
  meaning:
    "The counterpart of a stick bit: leaves the stub tongue and the hollow on the ends of door rails, face down in a table.",
  alsoCalled: ["coping", "scribe", "rail", "stile", "door frame"],
  suits: ["joint", "edge"],
  dimensions: {
    ...railDimensions,
    backCutterLengthMm: optionalLengthMm(
      `Length of the cutter at the tip, which must reach past the back of the rail. Default: ${USUAL_BACK_CUTTER_LENGTH_MM} mm (assumed).`,
      1,
      25,
    ),
  },
  faults: railFaults,
  outline: ({
    diameterMm,
    grooveWidthMm,
    grooveDepthMm,
    radiusMm,
    landMm,
    pilot,
    backCutterLengthMm = USUAL_BACK_CUTTER_LENGTH_MM,
  }) => {
    const rimMm = diameterMm / 2;
    const tongueRadiusMm = rimMm - grooveDepthMm;
    const tongueToMm = backCutterLengthMm + grooveWidthMm;
    const hollowFromMm = tongueToMm + landMm;
    return [
      line(0, backCutterLengthMm, rimMm),
      line(backCutterLengthMm, tongueToMm, tongueRadiusMm, tongueRadiusMm, roleBetween(pilot)),
      line(tongueToMm, hollowFromMm, rimMm),
      // The stick's rounding seen from the other side of the joint.
      arc(hollowFromMm, hollowFromMm + radiusMm, {
        centreMm: hollowFromMm,
        centreRadiusMm: rimMm - radiusMm,
        arcRadiusMm: radiusMm,
        side: 1,
      }),
    ];
  },
  pilotRadiusMm: ({ pilot, diameterMm, grooveDepthMm }) =>
    pilotRadiusBetweenMm(pilot, diameterMm, grooveDepthMm),
  usualCut: () => wholeProfile("joint"),
  searchedBy: ({ radiusMm }) => ({ radiusMm }),
  work: "lying",
  plunges: "never",
  isForTableOnly: true,
  wingFillRatio: 0.5,
});
