import { choice, lengthMm, optionalLengthMm } from "../../quantity/field.ts";
import { arc, line, type Segment } from "../outline.ts";
import { defineForm } from "./define.ts";
import { mustLeaveNeck, mustStayUnder } from "./fit.ts";
import { stretchesOf, widening } from "./read-wall.ts";
import { wholeProfile } from "./usual-cut.ts";

/** Diameter of a proposed bit, mm: 1-1/2 in. Source: common practice. */
const PROPOSED_DIAMETER_MM = 38.1;

export const panelRaisingVertical = defineForm({
  kind: "panel-raising-vertical",
  title: "Panel-raising, vertical",
  meaning:
    "A tall slim profile: the panel is fed standing on edge against a tall fence, so a small diameter will do.",
  alsoCalled: ["panel raiser", "raised", "fielding", "fielded", "door", "upright"],
  suits: ["panel", "edge"],
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 20, 60),
    faceWidthMm: lengthMm("Width of the sloping or curved border: along the axis.", 10, 60),
    faceDepthMm: lengthMm("Depth of the border at the panel's edge: square to the axis.", 2, 20),
    face: choice("Shape of the face between tongue and field.", ["bevel", "cove"]),
    tongueWidthMm: optionalLengthMm(
      "Length of the parallel edge nearest the shank, which forms the tongue. Default: none.",
      0.1,
      20,
    ),
  },
  faults: ({ diameterMm, faceWidthMm, faceDepthMm }) => [
    ...mustLeaveNeck("/faceDepthMm", faceDepthMm, diameterMm),
    ...mustStayUnder("/faceDepthMm", faceDepthMm, faceWidthMm),
  ],
  outline: ({ diameterMm, faceWidthMm, faceDepthMm, face, tongueWidthMm }) => {
    const rimMm = diameterMm / 2;
    const slope = faceSegment(face, rimMm, faceWidthMm, faceDepthMm);
    return tongueWidthMm === undefined
      ? [slope]
      : [slope, line(faceWidthMm, faceWidthMm + tongueWidthMm, rimMm)];
  },
  pilotRadiusMm: () => undefined,
  usualCut: () => wholeProfile("panel"),
  searchedBy: () => ({}),
  formsFor: (wall, sizes) => {
    const [slope, tongue, ...others] = stretchesOf(wall);
    const wide = slope && widening(slope);
    if (wide === undefined || slope === undefined || others.length > 0) return [];
    if (tongue !== undefined && tongue.kind !== "level") return [];
    const faceDepthMm = sizes.lengthMm(wide.widthMm);
    return [
      {
        kind: "panel-raising-vertical",
        diameterMm: PROPOSED_DIAMETER_MM,
        faceWidthMm: sizes.lengthMm(slope.lengthMm),
        faceDepthMm,
        face: "bevel",
        ...(tongue !== undefined && { tongueWidthMm: sizes.lengthMm(tongue.lengthMm) }),
      },
    ];
  },
  work: "standing",
  plunges: "never",
  isForTableOnly: true,
  wingFillRatio: 0.55,
});

function faceSegment(face: "bevel" | "cove", rimMm: number, widthMm: number, depthMm: number): Segment {
  if (face === "bevel") return line(0, widthMm, rimMm - depthMm, rimMm);
  // Runs out parallel to the axis at the panel's edge, where the tongue is.
  const arcRadiusMm = (widthMm * widthMm + depthMm * depthMm) / (2 * depthMm);
  return arc(0, widthMm, {
    centreMm: widthMm,
    centreRadiusMm: rimMm - arcRadiusMm,
    arcRadiusMm,
    side: 1,
  });
}
