import { line } from "../outline.ts";
import { defineForm, lengthMm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";

export const groove = defineForm({
  kind: "groove",
  title: "Groove",
  meaning:
    "One cutter between two shorter ones: grooves an edge for a tongue; made as a pair with a tongue bit.",
  dimensions: {
    diameterMm: lengthMm("Cutting diameter of the groove cutter.", 15, 80),
    grooveWidthMm: lengthMm("Width of the groove.", 1, 20),
    grooveDepthMm: lengthMm("Depth of the groove, from the edge.", 1, 25),
    cuttingLengthMm: lengthMm("Length over all cutters.", 6, 60),
  },
  faults: ({ diameterMm, grooveWidthMm, grooveDepthMm, cuttingLengthMm }) => [
    ...mustStayUnder("/grooveWidthMm", grooveWidthMm, cuttingLengthMm),
    ...mustStayUnder("/grooveDepthMm", grooveDepthMm, diameterMm / 2),
  ],
  outline: ({ diameterMm, grooveWidthMm, grooveDepthMm, cuttingLengthMm }) => {
    const radiusMm = diameterMm / 2;
    const fromMm = (cuttingLengthMm - grooveWidthMm) / 2;
    const toMm = fromMm + grooveWidthMm;
    return [
      line(0, fromMm, radiusMm - grooveDepthMm),
      line(fromMm, toMm, radiusMm),
      line(toMm, cuttingLengthMm, radiusMm - grooveDepthMm),
    ];
  },
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});
