import { lengthMm } from "../../quantity/field.ts";
import { arc } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustNotPass } from "./fit.ts";
import { pilotFaults, pilotHeightMm, pilotSegment, USUAL_PILOT_HEIGHT_MM } from "./pilot.ts";
import { wholeProfile } from "./usual-cut.ts";

export const thumbnail = defineForm({
  kind: "thumbnail",
  title: "Table-edge (thumbnail)",
  meaning: "A long shallow curve that runs out flat into the top: edges of table tops.",
  alsoCalled: ["table top", "tabletop", "thumb nail"],
  suits: ["edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 15, 100),
    profileHeightMm: lengthMm("Height of the curve, along the axis.", 1, 25),
    pilotDiameterMm: lengthMm("Diameter of the pilot bearing on the tip.", 4, 60),
    pilotHeightMm,
  },
  faults: ({ diameterMm, profileHeightMm, pilotDiameterMm }) => {
    const widthMm = (diameterMm - pilotDiameterMm) / 2;
    const pilot = pilotFaults(diameterMm, pilotDiameterMm);
    return pilot.length > 0 ? pilot : mustNotPass("/profileHeightMm", profileHeightMm, widthMm);
  },
  outline: ({ diameterMm, profileHeightMm, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => {
    const widthMm = (diameterMm - pilotDiameterMm) / 2;
    const rimMm = pilotHeightMm + profileHeightMm;
    // The circle through both ends that meets the top square to the axis.
    const arcRadiusMm = (widthMm * widthMm + profileHeightMm * profileHeightMm) / (2 * profileHeightMm);
    return [
      pilotSegment(pilotDiameterMm, pilotHeightMm),
      arc(pilotHeightMm, rimMm, {
        centreMm: rimMm - arcRadiusMm,
        centreRadiusMm: diameterMm / 2,
        arcRadiusMm,
        side: -1,
      }),
    ];
  },
  pilotRadiusMm: ({ pilotDiameterMm }) => pilotDiameterMm / 2,
  usualCut: () => wholeProfile("edge"),
  searchedBy: () => ({}),
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.5,
});
