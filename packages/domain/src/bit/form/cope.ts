import { arc, line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { railDimensions, railFaults } from "./rail.ts";

export const cope = defineForm({
  kind: "cope",
  title: "Cope (of a cope and stick pair)",
  meaning: "The counterpart of a stick bit: leaves the stub tongue and the hollow on the ends of door rails.",
  dimensions: railDimensions,
  faults: railFaults,
  outline: ({ diameterMm, grooveWidthMm, grooveDepthMm, radiusMm, landMm }) => {
    const rimMm = diameterMm / 2;
    const backMm = radiusMm;
    const tongueToMm = backMm + grooveWidthMm;
    const hollowFromMm = tongueToMm + landMm;
    return [
      line(0, backMm, rimMm),
      line(backMm, tongueToMm, rimMm - grooveDepthMm),
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
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.5,
});
