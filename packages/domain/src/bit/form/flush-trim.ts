import { choice, lengthMm, optionalLengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { MEASURED_SLACK_MM } from "./fit.ts";
import { pilotHeightMm, pilotSegment, USUAL_PILOT_HEIGHT_MM } from "./pilot.ts";
import { trimming } from "./usual-cut.ts";

/** So much wider than its edges is the bearing of no bit that can still be sharpened, mm: the tips are gone by then. Ours. */
const MOST_PROUD_MM = 6;

export const flushTrim = defineForm({
  kind: "flush-trim",
  title: "Flush-trim",
  meaning: "Parallel edges with a bearing of their own diameter: trims work flush with a template.",
  alsoCalled: ["flush trimming", "trimmer", "pattern", "template", "copy", "laminate"],
  suits: ["trim"],
  dimensions: {
    diameterMm: lengthMm("Cutting diameter.", 4, 60),
    cuttingLengthMm: lengthMm("Length of the cutting edges.", 4, 80),
    bearing: choice("Where the bearing sits; both if there is one at each end of the edges.", [
      "tip",
      "shank",
      "both",
    ]),
    pilotDiameterMm: optionalLengthMm(
      "Diameter of the bearing: that of the edges when new, more than it once they are sharpened. Default: the cutting diameter.",
      4,
      60 + MOST_PROUD_MM,
    ),
    pilotHeightMm,
  },
  faults: ({ diameterMm, pilotDiameterMm = diameterMm }) => {
    const min = diameterMm - MEASURED_SLACK_MM;
    const max = diameterMm + MOST_PROUD_MM;
    if (pilotDiameterMm >= min && pilotDiameterMm <= max) return [];
    const values = { given: pilotDiameterMm, min, max };
    return [{ pointer: "/pilotDiameterMm", code: "out-of-range", values }];
  },
  outline: ({
    diameterMm,
    cuttingLengthMm,
    bearing,
    pilotDiameterMm = diameterMm,
    pilotHeightMm = USUAL_PILOT_HEIGHT_MM,
  }) => {
    const radiusMm = diameterMm / 2;
    const pilotRadiusMm = pilotDiameterMm / 2;
    const fromMm = bearing === "shank" ? 0 : pilotHeightMm;
    const toMm = fromMm + cuttingLengthMm;
    return [
      ...(bearing === "shank" ? [] : [pilotSegment(pilotDiameterMm, pilotHeightMm)]),
      line(fromMm, toMm, radiusMm),
      ...(bearing === "tip" ? [] : [line(toMm, toMm + pilotHeightMm, pilotRadiusMm, pilotRadiusMm, "pilot")]),
    ];
  },
  pilotRadiusMm: ({ diameterMm, pilotDiameterMm = diameterMm }) => pilotDiameterMm / 2,
  usualCut: ({ cuttingLengthMm }) => trimming(cuttingLengthMm),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.45,
});
