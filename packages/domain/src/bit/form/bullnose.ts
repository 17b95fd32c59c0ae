import { arc } from "../outline.ts";
import { defineForm, lengthMm, optionalLengthMm } from "./define.ts";
import {
  pilotFaults,
  pilotHeightMm,
  pilotSegment,
  profileRadiusFaults,
  USUAL_PILOT_HEIGHT_MM,
} from "./pilot.ts";

export const bullnose = defineForm({
  kind: "bullnose",
  title: "Bullnose",
  meaning: "A hollow half circle: rounds a whole edge in one setting.",
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 8, 90),
    radiusMm: lengthMm("Radius of the half circle: half the thickness it rounds.", 1, 25),
    pilotDiameterMm: optionalLengthMm("Diameter of a pilot bearing on the tip. Left out: none.", 2, 70),
    pilotHeightMm,
  },
  faults: ({ diameterMm, radiusMm, pilotDiameterMm }) => [
    ...pilotFaults(diameterMm, pilotDiameterMm),
    ...profileRadiusFaults(diameterMm, radiusMm, pilotDiameterMm),
  ],
  outline: ({ diameterMm, radiusMm, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => {
    const fromMm = pilotDiameterMm === undefined ? 0 : pilotHeightMm;
    const hollow = arc(fromMm, fromMm + 2 * radiusMm, {
      centreMm: fromMm + radiusMm,
      centreRadiusMm: diameterMm / 2,
      arcRadiusMm: radiusMm,
      side: -1,
    });
    return pilotDiameterMm === undefined ? [hollow] : [pilotSegment(pilotDiameterMm, pilotHeightMm), hollow];
  },
  pilotRadiusMm: ({ pilotDiameterMm }) => (pilotDiameterMm === undefined ? undefined : pilotDiameterMm / 2),
  wingFillRatio: 0.5,
});
