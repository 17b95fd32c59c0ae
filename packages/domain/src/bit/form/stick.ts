import { arc, line } from "../outline.ts";
import { pilotRadiusBetweenMm, roleBetween } from "./between.ts";
import { defineForm } from "./define.ts";
import { railDimensions, railFaults } from "./rail.ts";
import { wholeProfile } from "./usual-cut.ts";

export const stick = defineForm({
  kind: "stick",
  title: "Stick (of a cope and stick pair)",
  meaning:
    "A groove cutter at the tip, then a rounding profile: the inside edges of door stiles and rails, face down in a table.",
  alsoCalled: ["sticking", "rail", "stile", "door frame"],
  suits: ["joint", "edge"],
  dimensions: railDimensions,
  faults: railFaults,
  outline: ({ diameterMm, grooveWidthMm, grooveDepthMm, radiusMm, landMm, pilot }) => {
    const rimMm = diameterMm / 2;
    const landRadiusMm = rimMm - grooveDepthMm;
    const arcFromMm = grooveWidthMm + landMm;
    return [
      line(0, grooveWidthMm, rimMm),
      line(grooveWidthMm, arcFromMm, landRadiusMm, landRadiusMm, roleBetween(pilot)),
      arc(arcFromMm, arcFromMm + radiusMm, {
        centreMm: arcFromMm,
        centreRadiusMm: landRadiusMm + radiusMm,
        arcRadiusMm: radiusMm,
        side: -1,
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
