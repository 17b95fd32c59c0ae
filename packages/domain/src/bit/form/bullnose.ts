import { lengthMm, optionalLengthMm } from "../../quantity/field.ts";
import { arc, line } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustLeaveNeck } from "./fit.ts";
import {
  fittedRadiusMm,
  pilotFaults,
  pilotHeightMm,
  pilotSegment,
  profileRadiusFaults,
  USUAL_PILOT_HEIGHT_MM,
} from "./pilot.ts";
import { PROPOSED_PILOT_DIAMETER_MM, stretchesOf } from "./read-wall.ts";
import { wholeProfile } from "./usual-cut.ts";

export const bullnose = defineForm({
  kind: "bullnose",
  title: "Bullnose",
  meaning: "A hollow half circle: rounds a whole edge in one setting.",
  alsoCalled: ["bull nose", "half round", "nosing"],
  suits: ["edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 8, 90),
    radiusMm: lengthMm("Radius of the half circle: half the thickness it rounds.", 1, 25),
    landMm: optionalLengthMm(
      "Height of the parallel edge on each side of the half circle. Default: none.",
      0.1,
      10,
    ),
    pilotDiameterMm: optionalLengthMm("Diameter of a pilot bearing on the tip. Default: none.", 2, 70),
    pilotHeightMm,
  },
  faults: ({ diameterMm, radiusMm, pilotDiameterMm }) => {
    const pilot = pilotFaults(diameterMm, pilotDiameterMm);
    const fit =
      pilotDiameterMm === undefined ? [] : profileRadiusFaults(diameterMm, radiusMm, pilotDiameterMm);
    return [...pilot, ...(fit.length > 0 ? fit : mustLeaveNeck("/radiusMm", radiusMm, diameterMm))];
  },
  outline: ({ diameterMm, radiusMm, landMm = 0, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => {
    const pilot = pilotDiameterMm === undefined ? [] : [pilotSegment(pilotDiameterMm, pilotHeightMm)];
    const fromMm = pilotDiameterMm === undefined ? 0 : pilotHeightMm;
    const arcRadiusMm = fittedRadiusMm(diameterMm, radiusMm, pilotDiameterMm);
    const hollowFromMm = fromMm + landMm;
    const hollowToMm = hollowFromMm + 2 * arcRadiusMm;
    const hollow = arc(hollowFromMm, hollowToMm, {
      centreMm: hollowFromMm + arcRadiusMm,
      centreRadiusMm: diameterMm / 2,
      arcRadiusMm,
      side: -1,
    });
    if (landMm === 0) return [...pilot, hollow];
    return [
      ...pilot,
      line(fromMm, hollowFromMm, diameterMm / 2),
      hollow,
      line(hollowToMm, hollowToMm + landMm, diameterMm / 2),
    ];
  },
  pilotRadiusMm: ({ pilotDiameterMm }) => (pilotDiameterMm === undefined ? undefined : pilotDiameterMm / 2),
  usualCut: () => wholeProfile("edge"),
  searchedBy: ({ radiusMm }) => ({ radiusMm }),
  middleMm: ({ diameterMm, radiusMm, landMm = 0, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) =>
    (pilotDiameterMm === undefined ? 0 : pilotHeightMm) +
    landMm +
    fittedRadiusMm(diameterMm, radiusMm, pilotDiameterMm),
  formsFor: (wall, sizes) => {
    const stretches = stretchesOf(wall);
    const curve = stretches.find(({ kind }) => kind === "round");
    if (curve === undefined || stretches.some(({ kind }) => kind !== "round" && kind !== "level")) return [];
    const radiusMm = sizes.lengthMm(curve.arcRadiusMm);
    const land = stretches.find(({ kind }) => kind === "level");
    return [
      {
        kind: "bullnose",
        diameterMm: PROPOSED_PILOT_DIAMETER_MM + 2 * radiusMm,
        radiusMm,
        ...(land !== undefined && { landMm: sizes.lengthMm(land.lengthMm) }),
      },
    ];
  },
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.5,
});
