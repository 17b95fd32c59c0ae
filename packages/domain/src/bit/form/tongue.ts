import { line } from "../outline.ts";
import { defineForm, lengthMm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";

export const tongue = defineForm({
  kind: "tongue",
  title: "Tongue",
  meaning: "Two cutters with a gap between: leaves a tongue along an edge; made as a pair with a groove bit.",
  dimensions: {
    diameterMm: lengthMm("Cutting diameter of the two cutters.", 15, 80),
    tongueThicknessMm: lengthMm("Thickness of the tongue: the gap between the cutters.", 1, 20),
    tongueLengthMm: lengthMm("Length of the tongue, from shoulder to edge.", 1, 25),
    cuttingLengthMm: lengthMm("Length over both cutters.", 6, 60),
  },
  faults: ({ diameterMm, tongueThicknessMm, tongueLengthMm, cuttingLengthMm }) => [
    ...mustStayUnder("/tongueThicknessMm", tongueThicknessMm, cuttingLengthMm),
    ...mustStayUnder("/tongueLengthMm", tongueLengthMm, diameterMm / 2),
  ],
  outline: ({ diameterMm, tongueThicknessMm, tongueLengthMm, cuttingLengthMm }) => {
    const radiusMm = diameterMm / 2;
    const gapFromMm = (cuttingLengthMm - tongueThicknessMm) / 2;
    const gapToMm = gapFromMm + tongueThicknessMm;
    return [
      line(0, gapFromMm, radiusMm),
      line(gapFromMm, gapToMm, radiusMm - tongueLengthMm),
      line(gapToMm, cuttingLengthMm, radiusMm),
    ];
  },
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});
