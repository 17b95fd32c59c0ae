import { angleDeg, lengthMm, optionalLengthMm } from "../../quantity/field.ts";
import { line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { slopeFaults } from "./fit.ts";
import { pilotFaults, pilotHeightMm, pilotSegment, USUAL_PILOT_HEIGHT_MM } from "./pilot.ts";
import { PROPOSED_PILOT_DIAMETER_MM, stretchesOf, widening } from "./read-wall.ts";
import { wholeProfile } from "./usual-cut.ts";

/** So much wider than the bevel is a proposed bit at least, mm. Ours. */
const SPARE_WIDTH_MM = 1;

export const chamfer = defineForm({
  kind: "chamfer",
  title: "Chamfer",
  meaning: "A sloping straight edge, with or without a pilot bearing: breaks or bevels an edge.",
  alsoCalled: ["chamfering", "bevel", "bevelling", "beveling"],
  suits: ["edge", "groove"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 6, 90),
    angleDeg: angleDeg("Angle between the cutting edge and the bit's axis; 45 for an even chamfer.", 5, 85),
    pilotDiameterMm: optionalLengthMm(
      "Diameter of the pilot bearing on the tip. Default: no pilot, the edges meet in a point.",
      4,
      70,
    ),
    pilotHeightMm,
  },
  faults: ({ diameterMm, angleDeg: slopeDeg, pilotDiameterMm }) => {
    const pilot = pilotFaults(diameterMm, pilotDiameterMm);
    if (pilot.length > 0) return pilot;
    return slopeFaults("/angleDeg", slopeDeg, slopeDeg, (diameterMm - (pilotDiameterMm ?? 0)) / 2);
  },
  outline: ({ diameterMm, angleDeg: slopeDeg, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => {
    const slope = Math.tan((slopeDeg * Math.PI) / 180);
    const rimRadiusMm = diameterMm / 2;
    if (pilotDiameterMm === undefined) return [line(0, rimRadiusMm / slope, 0, rimRadiusMm)];
    const pilotRadiusMm = pilotDiameterMm / 2;
    const rimMm = pilotHeightMm + (rimRadiusMm - pilotRadiusMm) / slope;
    return [
      pilotSegment(pilotDiameterMm, pilotHeightMm),
      line(pilotHeightMm, rimMm, pilotRadiusMm, rimRadiusMm),
    ];
  },
  pilotRadiusMm: ({ pilotDiameterMm }) => (pilotDiameterMm === undefined ? undefined : pilotDiameterMm / 2),
  usualCut: () => wholeProfile("edge"),
  searchedBy: ({ angleDeg: slopeDeg }) => ({ angleDeg: slopeDeg }),
  formsFor: (wall, sizes) => {
    const [slope, ...others] = stretchesOf(wall);
    const wide = slope && others.length === 0 ? widening(slope) : undefined;
    if (wide === undefined) return [];
    const pilotDiameterMm = PROPOSED_PILOT_DIAMETER_MM;
    const diameterMm = pilotDiameterMm + 2 * Math.ceil(wide.widthMm + SPARE_WIDTH_MM);
    return [{ kind: "chamfer", diameterMm, angleDeg: sizes.angleDeg(wide.angleDeg), pilotDiameterMm }];
  },
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.5,
});
