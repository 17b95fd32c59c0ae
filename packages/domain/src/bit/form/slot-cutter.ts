import { line } from "../outline.ts";
import { defineForm, lengthMm } from "./define.ts";
import { pilotFaults, pilotHeightMm, pilotSegment, USUAL_PILOT_HEIGHT_MM } from "./pilot.ts";

export const slotCutter = defineForm({
  kind: "slot-cutter",
  title: "Slot cutter",
  meaning: "A thin disc of teeth above a pilot bearing: slots an edge.",
  dimensions: {
    diameterMm: lengthMm("Cutting diameter.", 20, 80),
    slotWidthMm: lengthMm("Width of the slot: the thickness of the teeth.", 1, 15),
    pilotDiameterMm: lengthMm("Diameter of the pilot bearing.", 8, 70),
    pilotHeightMm,
  },
  faults: ({ diameterMm, pilotDiameterMm }) => pilotFaults(diameterMm, pilotDiameterMm),
  outline: ({ diameterMm, slotWidthMm, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => [
    pilotSegment(pilotDiameterMm, pilotHeightMm),
    line(pilotHeightMm, pilotHeightMm + slotWidthMm, diameterMm / 2),
  ],
  pilotRadiusMm: ({ pilotDiameterMm }) => pilotDiameterMm / 2,
  wingFillRatio: 0.8,
});
