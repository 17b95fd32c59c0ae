import { lengthMm, optionalChoice, optionalFlag, optionalLengthMm } from "../../quantity/field.ts";

/** Stock thickness taken if none is given: 3/4 in. Source: common practice. */
export const ASSUMED_THICKNESS_MM = 19;

/** What a cut along an edge may say of the edge. In a table a curved one has no fence. */
export const alongEdge = {
  isCurved: optionalFlag("The edge is curved: run against the pilot, without a fence."),
  side: optionalChoice(
    "Handheld: around the outside of the work, or the inside of an opening. Default: outside.",
    ["outside", "inside"],
  ),
};

/** Asks for a light pass with the rotation before the main ones, in the cuts along an edge that can be walked up to. */
export const backRout = optionalFlag(
  "A light pass with the rotation before the main ones, against tear-out. By hand only, the work clamped.",
);

/** How thick the work is, in the cuts that may leave it open. */
export const workThicknessMm = optionalLengthMm(
  `Thickness of the work. Default: ${ASSUMED_THICKNESS_MM} mm (assumed).`,
  3,
  150,
);

/** Waste is sawn to within so much of a template's line before it is cut to it, mm: 2 to 3. Source: common practice. */
export const SAWN_TO_WITHIN_MM = 3;

/** Template thickness taken if none is given: 1/4 in board, rounded. Source: common practice. */
export const ASSUMED_TEMPLATE_THICKNESS_MM = 6;

/** How thick the template is, in the cuts that may run along one. */
export const templateThicknessMm = optionalLengthMm(
  `Thickness of the template. Default: ${ASSUMED_TEMPLATE_THICKNESS_MM} mm, or as high as the bearing (assumed).`,
  2,
  150,
);

/** How deep a cut goes into the work, in the cuts whose end it is. */
export const depthMm = lengthMm("Depth of the cut.", 0.1, 100);
