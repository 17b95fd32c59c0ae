import { choice, lengthMm, optionalLengthMm } from "../../quantity/field.ts";
import { arc, type Segment } from "../outline.ts";
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
import { isWidening, PROPOSED_PILOT_DIAMETER_MM, stretchesOf } from "./read-wall.ts";
import { wholeProfile } from "./usual-cut.ts";

/** Curves side by side between pilot and rim. */
const CURVES = 2;

export const ogee = defineForm({
  kind: "ogee",
  title: "Ogee",
  meaning: "Two quarter circles that run into each other as an S above a pilot bearing.",
  alsoCalled: ["cyma", "moulding", "molding", "edging"],
  suits: ["edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 10, 90),
    radiusMm: lengthMm("Radius of each of the two curves.", 1, 20),
    curve: choice(
      "Which curve it leaves next to the pilot: roman a rounding, classical a hollow; the other follows toward the face.",
      ["roman", "classical"],
    ),
    pilotDiameterMm: optionalLengthMm(
      "Diameter of the pilot bearing. Default: the one that meets the curve, diameter less four times the radius.",
      2,
      70,
    ),
    pilotHeightMm,
  },
  faults: ({ diameterMm, radiusMm, pilotDiameterMm }) => [
    ...pilotFaults(diameterMm, pilotDiameterMm),
    ...profileRadiusFaults(diameterMm, radiusMm, pilotDiameterMm, CURVES),
  ],
  outline: ({ diameterMm, radiusMm, curve, pilotDiameterMm, pilotHeightMm = USUAL_PILOT_HEIGHT_MM }) => [
    pilotSegment(profilePilotDiameterMm(diameterMm, radiusMm, pilotDiameterMm, CURVES), pilotHeightMm),
    ...curveSegments(
      curve,
      pilotHeightMm,
      diameterMm / 2,
      fittedRadiusMm(diameterMm, radiusMm, pilotDiameterMm, CURVES),
    ),
  ],
  pilotRadiusMm: ({ diameterMm, radiusMm, pilotDiameterMm }) =>
    profilePilotDiameterMm(diameterMm, radiusMm, pilotDiameterMm, CURVES) / 2,
  usualCut: () => wholeProfile("edge"),
  searchedBy: ({ radiusMm }) => ({ radiusMm }),
  formsFor: (wall, sizes) => {
    const [first, second, ...others] = stretchesOf(wall);
    const curve = first?.kind === "round" ? "roman" : "classical";
    const other = curve === "roman" ? "hollow" : "round";
    if (first === undefined || second?.kind !== other || others.length > 0) return [];
    if (!isWidening(first) || !isWidening(second)) return [];
    const radiusMm = sizes.lengthMm(first.arcRadiusMm);
    const pilotDiameterMm = PROPOSED_PILOT_DIAMETER_MM;
    return [
      { kind: "ogee", diameterMm: pilotDiameterMm + 2 * CURVES * radiusMm, radiusMm, curve, pilotDiameterMm },
    ];
  },
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.5,
});

function curveSegments(
  curve: "roman" | "classical",
  fromMm: number,
  rimRadiusMm: number,
  arcRadiusMm: number,
): Segment[] {
  const middleMm = fromMm + arcRadiusMm;
  const toMm = middleMm + arcRadiusMm;
  const middleRadiusMm = rimRadiusMm - arcRadiusMm;
  const innerRadiusMm = middleRadiusMm - arcRadiusMm;
  return curve === "roman"
    ? [
        arc(fromMm, middleMm, { centreMm: fromMm, centreRadiusMm: middleRadiusMm, arcRadiusMm, side: -1 }),
        arc(middleMm, toMm, { centreMm: toMm, centreRadiusMm: middleRadiusMm, arcRadiusMm, side: 1 }),
      ]
    : [
        arc(fromMm, middleMm, { centreMm: middleMm, centreRadiusMm: innerRadiusMm, arcRadiusMm, side: 1 }),
        arc(middleMm, toMm, { centreMm: middleMm, centreRadiusMm: rimRadiusMm, arcRadiusMm, side: -1 }),
      ];
}
