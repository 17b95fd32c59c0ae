import { line } from "../outline.ts";
import { angleDeg, defineForm, lengthMm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";

/** An edge that took more than this of the radius would leave no neck to hold it. Ours. */
const MOST_OF_RADIUS = 0.8;

export const dovetail = defineForm({
  kind: "dovetail",
  title: "Dovetail",
  meaning:
    "Widest at the tip: pins, tails and sliding dovetails. It can only be fed, never lowered or lifted.",
  dimensions: {
    diameterMm: lengthMm("Cutting diameter at the tip.", 4, 50),
    angleDeg: angleDeg("Angle between the edge and the axis; 7 to 14 is usual.", 4, 20),
    cuttingLengthMm: lengthMm("Length of the cutting edges from the tip.", 3, 40),
  },
  faults: ({ diameterMm, angleDeg: slopeDeg, cuttingLengthMm }) =>
    mustStayUnder(
      "/cuttingLengthMm",
      cuttingLengthMm,
      (MOST_OF_RADIUS * diameterMm) / 2 / Math.tan((slopeDeg * Math.PI) / 180),
    ),
  outline: ({ diameterMm, angleDeg: slopeDeg, cuttingLengthMm }) => {
    const radiusMm = diameterMm / 2;
    const neckMm = radiusMm - cuttingLengthMm * Math.tan((slopeDeg * Math.PI) / 180);
    return [line(0, cuttingLengthMm, radiusMm, neckMm)];
  },
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.6,
});
