import { arc, line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { railDimensions, railFaults } from "./rail.ts";

export const stick = defineForm({
  kind: "stick",
  title: "Stick (of a cope and stick pair)",
  meaning: "A groove cutter under a rounding profile: the inside edges of door stiles and rails.",
  dimensions: railDimensions,
  faults: railFaults,
  outline: ({ diameterMm, grooveWidthMm, grooveDepthMm, radiusMm, landMm }) => {
    const rimMm = diameterMm / 2;
    const landRadiusMm = rimMm - grooveDepthMm;
    const arcFromMm = grooveWidthMm + landMm;
    return [
      line(0, grooveWidthMm, rimMm),
      line(grooveWidthMm, arcFromMm, landRadiusMm),
      arc(arcFromMm, arcFromMm + radiusMm, {
        centreMm: arcFromMm,
        centreRadiusMm: landRadiusMm + radiusMm,
        arcRadiusMm: radiusMm,
        side: -1,
      }),
    ];
  },
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.5,
});
