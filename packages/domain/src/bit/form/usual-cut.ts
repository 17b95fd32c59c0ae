import { type Outline, outlineLengthMm } from "../outline.ts";
import { isParallel } from "../shape.ts";

/** The kinds of cut, by the trade's names; `cut/kind` says what each is. */
export type CutKind = "edge" | "panel" | "joint" | "rabbet" | "groove" | "trim" | "surface" | "inlay";

/** The cut a bit is made for, in terms of the bit alone: which edges, and in which wood, others say. */
export type UsualCut =
  | { readonly kind: "edge" | "panel" | "joint"; readonly thicknessMm: number }
  | { readonly kind: "groove" | "rabbet"; readonly depthMm: number }
  | { readonly kind: "trim"; readonly overhangMm: number; readonly thicknessMm: number };

/** A groove in full wood is this share of the bit's diameter deep. Ours. */
const GROOVE_SHARE = 0.25;

/** Taken off by a trimming, mm: about 1/16 in. Ours. */
const TRIM_MM = 1.5;

/** Stock thick enough for the whole of any profile, mm. */
const THICK_MM = 150;

/** The whole profile along an edge, as the kind of cut it is made for. */
export function wholeProfile(kind: "edge" | "panel" | "joint"): UsualCut {
  return { kind, thicknessMm: THICK_MM };
}

/** Half of a joint in the thickest stock that a bit joins whose middle lies there, mm from its tip. */
export function thickestJoint(middleMm: number): UsualCut {
  return { kind: "joint", thicknessMm: 2 * middleMm };
}

/** A groove as deep as the edges are long: for bits that leave their shape, not a depth. */
export function wholeGroove(outline: Outline): UsualCut {
  return { kind: "groove", depthMm: outlineLengthMm(outline) };
}

/** A step along an edge, as deep as the edges are long and as wide as the pilot allows. */
export function wholeStep(cuttingLengthMm: number): UsualCut {
  return { kind: "rabbet", depthMm: cuttingLengthMm };
}

/** One light pass of a groove with a plain cylinder. */
export function lightGroove(diameterMm: number, cuttingLengthMm: number): UsualCut {
  return { kind: "groove", depthMm: Math.min(cuttingLengthMm, diameterMm * GROOVE_SHARE) };
}

/** A trimming of work as thick as the edges are long. */
export function trimming(cuttingLengthMm: number): UsualCut {
  return { kind: "trim", overhangMm: TRIM_MM, thicknessMm: cuttingLengthMm };
}

/** What the shape alone says: a plain cylinder without a pilot grooves, anything else runs along an edge. */
export function usualCutByShape(
  outline: Outline,
  diameterMm: number,
  pilotDiameterMm: number | undefined,
): UsualCut {
  return pilotDiameterMm === undefined && isParallel(outline)
    ? lightGroove(diameterMm, outlineLengthMm(outline))
    : wholeProfile("edge");
}
