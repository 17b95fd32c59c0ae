import { lengthMm } from "../../quantity/field.ts";
import { arc, line } from "../outline.ts";
import { defineForm } from "./define.ts";
import {
  fittedRadiusMm,
  pilotFaults,
  pilotHeightMm,
  pilotSegment,
  profileRadiusFaults,
  USUAL_PILOT_HEIGHT_MM,
} from "./pilot.ts";
import { isWidening, PROPOSED_PILOT_DIAMETER_MM, stretchesOf } from "./read-wall.ts";
import { wholeProfile } from "./usual-cut.ts";

export const beading = defineForm({
  kind: "beading",
  title: "Beading",
  meaning:
    "A hollow quarter circle between two fillets: rounds an edge with a small step at the face and another at the edge.",
  alsoCalled: ["bead", "ovolo"],
  suits: ["edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 6, 90),
    radiusMm: lengthMm("Radius of the rounding between the fillets.", 0.5, 40),
    pilotDiameterMm: lengthMm(
      "Diameter of the pilot bearing. What it is smaller than diameter less twice the radius is the fillet at the edge, on both sides together.",
      2,
      70,
    ),
    filletMm: lengthMm("Height of the fillet at the face, along the axis.", 0.2, 10),
    pilotHeightMm,
  },
  faults: ({ diameterMm, radiusMm, pilotDiameterMm }) => [
    ...pilotFaults(diameterMm, pilotDiameterMm),
    ...profileRadiusFaults(diameterMm, radiusMm, pilotDiameterMm),
  ],
  outline: ({ diameterMm, radiusMm, pilotDiameterMm, filletMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => {
    const arcRadiusMm = fittedRadiusMm(diameterMm, radiusMm, pilotDiameterMm);
    const rimMm = pilotHeightMm + arcRadiusMm;
    return [
      pilotSegment(pilotDiameterMm, pilotHeightMm),
      arc(pilotHeightMm, rimMm, {
        centreMm: pilotHeightMm,
        centreRadiusMm: diameterMm / 2,
        arcRadiusMm,
        side: -1,
      }),
      line(rimMm, rimMm + filletMm, diameterMm / 2),
    ];
  },
  pilotRadiusMm: ({ pilotDiameterMm }) => pilotDiameterMm / 2,
  usualCut: () => wholeProfile("edge"),
  searchedBy: ({ radiusMm }) => ({ radiusMm }),
  formsFor: (wall, sizes) => {
    const [curve, fillet, ...others] = stretchesOf(wall);
    if (curve?.kind !== "round" || fillet?.kind !== "level" || others.length > 0 || !isWidening(curve))
      return [];
    const radiusMm = sizes.lengthMm(curve.arcRadiusMm);
    const pilotDiameterMm = PROPOSED_PILOT_DIAMETER_MM;
    const atEdgeMm = sizes.lengthMm(curve.startMm);
    const diameterMm = pilotDiameterMm + 2 * (radiusMm + atEdgeMm);
    return [
      { kind: "beading", diameterMm, radiusMm, pilotDiameterMm, filletMm: sizes.lengthMm(fillet.lengthMm) },
    ];
  },
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.5,
});
