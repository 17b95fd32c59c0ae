import { lengthMm, optionalLengthMm } from "../../quantity/field.ts";
import { arc } from "../outline.ts";
import { defineForm } from "./define.ts";
import {
  fittedRadiusMm,
  pilotFaults,
  pilotHeightMm,
  pilotSegment,
  profilePilotDiameterMm,
  profileRadiusFaults,
  USUAL_PILOT_HEIGHT_MM,
} from "./pilot.ts";
import { isSameLength, isWidening, onlyStretch, PROPOSED_PILOT_DIAMETER_MM } from "./read-wall.ts";
import { wholeProfile } from "./usual-cut.ts";

export const roundOver = defineForm({
  kind: "round-over",
  title: "Round-over",
  meaning: "A hollow quarter circle above a pilot bearing: rounds an edge. A smaller bearing adds a fillet.",
  alsoCalled: ["rounding", "ovolo", "quarter round", "roundover"],
  suits: ["edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 6, 90),
    radiusMm: lengthMm("Radius of the rounding it leaves.", 0.5, 40),
    pilotDiameterMm: optionalLengthMm(
      "Diameter of the pilot bearing. Default: the one that meets the curve, diameter less twice the radius.",
      2,
      70,
    ),
    pilotHeightMm,
  },
  faults: ({ diameterMm, radiusMm, pilotDiameterMm }) => [
    ...pilotFaults(diameterMm, pilotDiameterMm),
    ...profileRadiusFaults(diameterMm, radiusMm, pilotDiameterMm),
  ],
  outline: ({ diameterMm, radiusMm, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => {
    const arcRadiusMm = fittedRadiusMm(diameterMm, radiusMm, pilotDiameterMm);
    return [
      pilotSegment(profilePilotDiameterMm(diameterMm, radiusMm, pilotDiameterMm), pilotHeightMm),
      arc(pilotHeightMm, pilotHeightMm + arcRadiusMm, {
        centreMm: pilotHeightMm,
        centreRadiusMm: diameterMm / 2,
        arcRadiusMm,
        side: -1,
      }),
    ];
  },
  pilotRadiusMm: ({ diameterMm, radiusMm, pilotDiameterMm }) =>
    profilePilotDiameterMm(diameterMm, radiusMm, pilotDiameterMm) / 2,
  usualCut: () => wholeProfile("edge"),
  searchedBy: ({ radiusMm }) => ({ radiusMm }),
  formsFor: (wall, sizes) => {
    const curve = onlyStretch(wall, "round");
    if (curve === undefined || !isWidening(curve)) return [];
    const radiusMm = sizes.lengthMm(curve.arcRadiusMm);
    const pilotDiameterMm = PROPOSED_PILOT_DIAMETER_MM;
    const filletMm = isSameLength(curve.startMm, 0) ? 0 : sizes.lengthMm(curve.startMm);
    return [
      {
        kind: "round-over",
        diameterMm: pilotDiameterMm + 2 * (filletMm + radiusMm),
        radiusMm,
        pilotDiameterMm,
      },
    ];
  },
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.5,
});
