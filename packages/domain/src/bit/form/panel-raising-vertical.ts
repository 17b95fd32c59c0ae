import { arc, line, type Segment } from "../outline.ts";
import { choice, defineForm, lengthMm } from "./define.ts";
import { mustStayUnder } from "./fit.ts";

export const panelRaisingVertical = defineForm({
  kind: "panel-raising-vertical",
  title: "Panel-raising, vertical",
  meaning:
    "A tall slim profile: the panel is fed standing on edge against a tall fence, so a small diameter will do.",
  dimensions: {
    diameterMm: lengthMm("Largest cutting diameter.", 20, 60),
    faceWidthMm: lengthMm("Width of the raised border: along the axis.", 10, 60),
    faceDepthMm: lengthMm("Depth of the border at the panel's edge: square to the axis.", 2, 20),
    face: choice("Shape of the face between tongue and field.", ["bevel", "cove"]),
  },
  faults: ({ diameterMm, faceWidthMm, faceDepthMm }) => [
    ...mustStayUnder("/faceDepthMm", faceDepthMm, diameterMm / 2),
    ...mustStayUnder("/faceDepthMm", faceDepthMm, faceWidthMm),
  ],
  outline: ({ diameterMm, faceWidthMm, faceDepthMm, face }) => [
    faceSegment(face, diameterMm / 2 - faceDepthMm, faceWidthMm, faceDepthMm),
  ],
  pilotRadiusMm: () => undefined,
  wingFillRatio: 0.55,
});

function faceSegment(face: "bevel" | "cove", tipRadiusMm: number, widthMm: number, depthMm: number): Segment {
  if (face === "bevel") return line(0, widthMm, tipRadiusMm, tipRadiusMm + depthMm);
  // Runs out parallel to the axis at the panel's edge, where the tongue is.
  const arcRadiusMm = (widthMm * widthMm + depthMm * depthMm) / (2 * depthMm);
  return arc(0, widthMm, {
    centreMm: widthMm,
    centreRadiusMm: tipRadiusMm + depthMm - arcRadiusMm,
    arcRadiusMm,
    side: 1,
  });
}
