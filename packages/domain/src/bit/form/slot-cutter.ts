import { lengthMm, optionalChoice, optionalLengthMm } from "../../quantity/field.ts";
import { line, type Segment } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";
import { pilotFaults, pilotHeightMm, USUAL_PILOT_HEIGHT_MM } from "./pilot.ts";
import { usualCutByShape } from "./usual-cut.ts";

/** Diameter of the arbor a cutter is mounted on (5/16 in). Source: common practice. */
export const USUAL_ARBOR_DIAMETER_MM = 7.94;

export const slotCutter = defineForm({
  kind: "slot-cutter",
  title: "Slot cutter",
  meaning: "A thin disc of teeth on an arbor, with or without a pilot bearing: slots an edge.",
  alsoCalled: ["slotting", "slotter", "biscuit", "spline"],
  suits: ["edge", "groove"],
  dimensions: {
    diameterMm: lengthMm("Cutting diameter.", 20, 80),
    slotWidthMm: lengthMm("Width of the slot: the thickness of the teeth.", 1, 15),
    pilotDiameterMm: optionalLengthMm("Diameter of the pilot bearing. Default: none.", 8, 70),
    pilotHeightMm,
    bearing: optionalChoice("Where the pilot bearing sits. Default: on the tip.", ["tip", "shank"]),
    arborLengthMm: optionalLengthMm(
      "Length of the arbor between the disc, with its bearing, and the shank. Default: none, so that the slot is cut at the table or base.",
      1,
      60,
    ),
    arborDiameterMm: optionalLengthMm(
      `Diameter of the arbor. Default: ${USUAL_ARBOR_DIAMETER_MM} mm (assumed).`,
      4,
      20,
    ),
  },
  faults: ({ diameterMm, pilotDiameterMm, arborDiameterMm = USUAL_ARBOR_DIAMETER_MM }) => [
    ...pilotFaults(diameterMm, pilotDiameterMm),
    ...mustStayUnder("/arborDiameterMm", arborDiameterMm, diameterMm),
  ],
  outline: ({
    diameterMm,
    slotWidthMm,
    pilotDiameterMm,
    pilotHeightMm = USUAL_PILOT_HEIGHT_MM,
    bearing = "tip",
    arborLengthMm = 0,
    arborDiameterMm = USUAL_ARBOR_DIAMETER_MM,
  }) => {
    const bearingMm = pilotDiameterMm === undefined ? 0 : pilotHeightMm;
    const discFromMm = bearing === "tip" ? bearingMm : 0;
    const discToMm = discFromMm + slotWidthMm;
    const arborFromMm = bearing === "tip" ? discToMm : discToMm + bearingMm;
    const segments: Segment[] = [line(discFromMm, discToMm, diameterMm / 2)];
    if (pilotDiameterMm !== undefined) {
      const pilotRadiusMm = pilotDiameterMm / 2;
      if (bearing === "tip") segments.unshift(line(0, bearingMm, pilotRadiusMm, pilotRadiusMm, "pilot"));
      else segments.push(line(discToMm, arborFromMm, pilotRadiusMm, pilotRadiusMm, "pilot"));
    }
    if (arborLengthMm > 0) {
      const arborRadiusMm = arborDiameterMm / 2;
      segments.push(line(arborFromMm, arborFromMm + arborLengthMm, arborRadiusMm, arborRadiusMm, "body"));
    }
    return segments;
  },
  pilotRadiusMm: ({ pilotDiameterMm }) => (pilotDiameterMm === undefined ? undefined : pilotDiameterMm / 2),
  usualCut: ({ diameterMm, pilotDiameterMm }, outline) =>
    usualCutByShape(outline, diameterMm, pilotDiameterMm),
  searchedBy: () => ({}),
  middleMm: ({ slotWidthMm, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM, bearing = "tip" }) =>
    (pilotDiameterMm !== undefined && bearing === "tip" ? pilotHeightMm : 0) + slotWidthMm / 2,
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.8,
});
