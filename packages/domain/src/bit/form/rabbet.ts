import { lengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { pilotFaults, pilotHeightMm, pilotSegment, USUAL_PILOT_HEIGHT_MM } from "./pilot.ts";
import { onlyStretch, PROPOSED_PILOT_DIAMETER_MM, soldLengthMm } from "./read-wall.ts";
import { wholeStep } from "./usual-cut.ts";

export const rabbet = defineForm({
  kind: "rabbet",
  title: "Rabbet",
  meaning: "Parallel edges above a pilot bearing: cuts a step along an edge.",
  alsoCalled: ["rebate", "rabbeting", "rebating"],
  suits: ["rabbet", "edge"],
  dimensions: {
    diameterMm: lengthMm("Cutting diameter.", 6, 80),
    cuttingLengthMm: lengthMm("Length of the cutting edges.", 2, 50),
    pilotDiameterMm: lengthMm("Diameter of the pilot bearing on the tip.", 4, 70),
    pilotHeightMm,
  },
  faults: ({ diameterMm, pilotDiameterMm }) => pilotFaults(diameterMm, pilotDiameterMm),
  outline: ({ diameterMm, cuttingLengthMm, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => [
    pilotSegment(pilotDiameterMm, pilotHeightMm),
    line(pilotHeightMm, pilotHeightMm + cuttingLengthMm, diameterMm / 2),
  ],
  pilotRadiusMm: ({ pilotDiameterMm }) => pilotDiameterMm / 2,
  usualCut: ({ cuttingLengthMm }) => wholeStep(cuttingLengthMm),
  searchedBy: () => ({}),
  formsFor: (wall, sizes) => {
    const level = onlyStretch(wall, "level");
    if (level === undefined) return [];
    const pilotDiameterMm = PROPOSED_PILOT_DIAMETER_MM;
    return [
      {
        kind: "rabbet",
        diameterMm: pilotDiameterMm + 2 * sizes.lengthMm(level.endMm),
        pilotDiameterMm,
        cuttingLengthMm: soldLengthMm(level.lengthMm),
      },
    ];
  },
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.42,
});
