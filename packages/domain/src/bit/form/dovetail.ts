import { angleDeg, lengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustLeaveNeck } from "./fit.ts";
import { wholeGroove } from "./usual-cut.ts";

export const dovetail = defineForm({
  kind: "dovetail",
  title: "Dovetail",
  meaning:
    "Widest at the tip: pins, tails and sliding dovetails. It can only be fed in and out along the cut, never raised or lowered in it.",
  alsoCalled: ["dove tail"],
  suits: ["groove", "joint", "edge"],
  dimensions: {
    diameterMm: lengthMm("Cutting diameter at the tip.", 4, 50),
    angleDeg: angleDeg("Angle between the edge and the axis; 7 to 14 is usual.", 4, 20),
    cuttingLengthMm: lengthMm("Length of the cutting edges from the tip, along the axis.", 3, 40),
  },
  faults: ({ diameterMm, angleDeg: slopeDeg, cuttingLengthMm }) =>
    // Taken per mm of length, so that the answer is the greatest length.
    mustLeaveNeck("/cuttingLengthMm", cuttingLengthMm, diameterMm / Math.tan((slopeDeg * Math.PI) / 180)),
  outline: ({ diameterMm, angleDeg: slopeDeg, cuttingLengthMm }) => {
    const radiusMm = diameterMm / 2;
    const neckMm = radiusMm - cuttingLengthMm * Math.tan((slopeDeg * Math.PI) / 180);
    return [line(0, cuttingLengthMm, radiusMm, neckMm)];
  },
  pilotRadiusMm: () => undefined,
  usualCut: (_, outline) => wholeGroove(outline),
  searchedBy: ({ angleDeg: slopeDeg }) => ({ angleDeg: slopeDeg }),
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.6,
});
