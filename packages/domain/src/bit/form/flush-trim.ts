import { choice, lengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { pilotHeightMm, pilotSegment, USUAL_PILOT_HEIGHT_MM } from "./pilot.ts";
import { trimming } from "./usual-cut.ts";

export const flushTrim = defineForm({
  kind: "flush-trim",
  title: "Flush-trim",
  meaning: "Parallel edges with a bearing of their own diameter: trims work flush with a template.",
  alsoCalled: ["flush trimming", "trimmer", "pattern", "template", "copy", "laminate"],
  suits: ["trim"],
  dimensions: {
    diameterMm: lengthMm("Cutting diameter, and the bearing's.", 4, 60),
    cuttingLengthMm: lengthMm("Length of the cutting edges.", 4, 80),
    bearing: choice("Where the bearing sits; both if there is one at each end of the edges.", [
      "tip",
      "shank",
      "both",
    ]),
    pilotHeightMm,
  },
  faults: () => [],
  outline: ({ diameterMm, cuttingLengthMm, bearing, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => {
    const radiusMm = diameterMm / 2;
    const fromMm = bearing === "shank" ? 0 : pilotHeightMm;
    const toMm = fromMm + cuttingLengthMm;
    return [
      ...(bearing === "shank" ? [] : [pilotSegment(diameterMm, pilotHeightMm)]),
      line(fromMm, toMm, radiusMm),
      ...(bearing === "tip" ? [] : [line(toMm, toMm + pilotHeightMm, radiusMm, radiusMm, "pilot")]),
    ];
  },
  pilotRadiusMm: ({ diameterMm }) => diameterMm / 2,
  usualCut: ({ cuttingLengthMm }) => trimming(cuttingLengthMm),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.45,
});
