import { choice, lengthMm, optionalLengthMm } from "../../quantity/field.ts";
import { arc, line, type Segment } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustNotPass, mustStayUnder } from "./fit.ts";
import { pilotFaults, pilotHeightMm, USUAL_PILOT_HEIGHT_MM } from "./pilot.ts";
import { isSameLength, PROPOSED_PILOT_DIAMETER_MM, stretchesOf, widening } from "./read-wall.ts";
import { wholeProfile } from "./usual-cut.ts";

/** Height of the square step many of these bits leave around the field. Source: common practice. */
export const USUAL_SHOULDER_HEIGHT_MM = 1.5;

/** Height of a common back-cutter. Source: common practice. */
export const USUAL_BACK_CUTTER_HEIGHT_MM = 6.35;

type Face = "bevel" | "cove" | "ogee";
type Box = { tMm: number; radiusMm: number; heightMm: number; widthMm: number };

export const panelRaising = defineForm({
  kind: "panel-raising",
  title: "Panel-raising, horizontal",
  meaning:
    "A wide, flat profile above a pilot bearing: raises the field of a door panel, face down in a table.",
  alsoCalled: ["panel raiser", "raised", "fielding", "fielded", "door"],
  suits: ["panel", "edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 30, 120),
    pilotDiameterMm: lengthMm("Diameter of the pilot bearing on the tip.", 6, 60),
    profileHeightMm: lengthMm("Height of the sloping or curved face, along the axis.", 2, 40),
    face: choice("Shape of the face between tongue and field.", ["bevel", "cove", "ogee"]),
    tongueWidthMm: optionalLengthMm(
      "Width of the flat that forms the tongue, next to the pilot. Default: none.",
      0.1,
      30,
    ),
    shoulderHeightMm: optionalLengthMm(
      `Height of the square step at the rim. Default: ${USUAL_SHOULDER_HEIGHT_MM} mm (assumed).`,
      0.1,
      20,
    ),
    pilotHeightMm,
    backCutterDiameterMm: optionalLengthMm(
      "Diameter of a back-cutter on the tip, beyond the pilot: it relieves the panel's other face. Default: none.",
      10,
      100,
    ),
    backCutterHeightMm: optionalLengthMm(
      `Height of the back-cutter. Default: ${USUAL_BACK_CUTTER_HEIGHT_MM} mm (assumed).`,
      1,
      20,
    ),
  },
  faults: ({ diameterMm, pilotDiameterMm, profileHeightMm, tongueWidthMm = 0, backCutterDiameterMm }) => {
    const pilot = pilotFaults(diameterMm, pilotDiameterMm);
    if (backCutterDiameterMm !== undefined) {
      pilot.push(...mustStayUnder("/backCutterDiameterMm", backCutterDiameterMm, diameterMm));
      pilot.push(...mustStayUnder("/pilotDiameterMm", pilotDiameterMm, backCutterDiameterMm));
    }
    if (pilot.length > 0) return pilot;
    const faceWidthMm = (diameterMm - pilotDiameterMm) / 2;
    const tongue = mustStayUnder("/tongueWidthMm", tongueWidthMm, faceWidthMm);
    if (tongue.length > 0) return tongue;
    // A face steeper than this is a vertical panel bit's, and its arcs would turn back on themselves.
    return mustNotPass("/profileHeightMm", profileHeightMm, faceWidthMm - tongueWidthMm);
  },
  outline: ({
    diameterMm,
    pilotDiameterMm,
    profileHeightMm,
    face,
    tongueWidthMm = 0,
    shoulderHeightMm = USUAL_SHOULDER_HEIGHT_MM,
    pilotHeightMm = USUAL_PILOT_HEIGHT_MM,
    backCutterDiameterMm,
    backCutterHeightMm = USUAL_BACK_CUTTER_HEIGHT_MM,
  }) => {
    const rimRadiusMm = diameterMm / 2;
    const pilotFromMm = backCutterDiameterMm === undefined ? 0 : backCutterHeightMm;
    const faceFromMm = pilotFromMm + pilotHeightMm;
    const rimMm = faceFromMm + profileHeightMm;
    const radiusMm = pilotDiameterMm / 2 + tongueWidthMm;
    const box = { tMm: faceFromMm, radiusMm, heightMm: profileHeightMm, widthMm: rimRadiusMm - radiusMm };
    return [
      ...(backCutterDiameterMm === undefined ? [] : [line(0, pilotFromMm, backCutterDiameterMm / 2)]),
      line(pilotFromMm, faceFromMm, pilotDiameterMm / 2, pilotDiameterMm / 2, "pilot"),
      ...faceSegments(face, box),
      line(rimMm, rimMm + shoulderHeightMm, rimRadiusMm),
    ];
  },
  pilotRadiusMm: ({ pilotDiameterMm }) => pilotDiameterMm / 2,
  usualCut: () => wholeProfile("panel"),
  searchedBy: () => ({}),
  formsFor: (wall, sizes) => {
    const [slope, shoulder, ...others] = stretchesOf(wall);
    const wide = slope && widening(slope);
    if (wide === undefined || slope === undefined || others.length > 0) return [];
    if (shoulder !== undefined && shoulder.kind !== "level") return [];
    const pilotDiameterMm = PROPOSED_PILOT_DIAMETER_MM;
    const tongueWidthMm = isSameLength(slope.startMm, 0) ? 0 : sizes.lengthMm(slope.startMm);
    return [
      {
        kind: "panel-raising",
        diameterMm: pilotDiameterMm + 2 * (tongueWidthMm + sizes.lengthMm(wide.widthMm)),
        pilotDiameterMm,
        profileHeightMm: sizes.lengthMm(slope.lengthMm),
        face: "bevel",
        ...(tongueWidthMm > 0 && { tongueWidthMm }),
        ...(shoulder !== undefined && { shoulderHeightMm: sizes.lengthMm(shoulder.lengthMm) }),
      },
    ];
  },
  work: "lying",
  plunges: "never",
  wingFillRatio: 0.6,
});

function faceSegments(face: Face, { tMm, radiusMm, heightMm, widthMm }: Box): Segment[] {
  const endMm = tMm + heightMm;
  const endRadiusMm = radiusMm + widthMm;
  switch (face) {
    case "bevel":
      return [line(tMm, endMm, radiusMm, endRadiusMm)];
    case "cove": {
      const arcRadiusMm = tangentArcRadiusMm(heightMm, widthMm);
      return [
        arc(tMm, endMm, { centreMm: tMm + arcRadiusMm, centreRadiusMm: radiusMm, arcRadiusMm, side: 1 }),
      ];
    }
    case "ogee": {
      const arcRadiusMm = tangentArcRadiusMm(heightMm / 2, widthMm / 2);
      const middleMm = tMm + heightMm / 2;
      return [
        arc(tMm, middleMm, { centreMm: tMm + arcRadiusMm, centreRadiusMm: radiusMm, arcRadiusMm, side: 1 }),
        arc(middleMm, endMm, {
          centreMm: endMm - arcRadiusMm,
          centreRadiusMm: endRadiusMm,
          arcRadiusMm,
          side: -1,
        }),
      ];
    }
  }
}

/** Radius of the arc that leaves a flat face tangentially and rises `heightMm` over `widthMm`. */
function tangentArcRadiusMm(heightMm: number, widthMm: number): number {
  return (widthMm * widthMm + heightMm * heightMm) / (2 * heightMm);
}
