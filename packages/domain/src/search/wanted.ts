import type { Curve, Piece } from "./piece.ts";
import { greatestDepthMm } from "./piece.ts";

/** How the work lies: flat on a face with its edge to the fence, or standing on its edge or end with a face to the fence. */
export type Presentation = {
  readonly work: "flat" | "standing";
  /** Which face is down if it lies flat, or to the fence if it stands. */
  readonly face: "front" | "back";
};

/**
 * A wanted profile as it is seen by a bit: the depth to be removed at each height above the table, straight or circular pieces
 * in rising order. Flat, heights run from the front face and depths from the edge; standing, heights run from the edge and
 * depths from the face at the fence.
 */
export type WantedWall = Presentation & {
  /** From height 0 to the top of the work. Depth 0 is untouched. */
  readonly pieces: readonly Piece[];
};

/**
 * What is to be removed from the edge of a board, as each way of presenting the work shows it that has one depth at each
 * height. Flat, one view serves both faces: the back one turns it over.
 */
export type WantedProfile = { readonly thicknessMm: number; readonly walls: readonly WantedWall[] };

/** Standing work goes on upward past the reach of every bit; so far it is looked at, mm. */
export const STANDING_HEIGHT_MM = 1000;

/** Greatest depth of a wall, mm. */
export function deepestMm(wall: Curve): number {
  return Math.max(...wall.map((piece) => greatestDepthMm(piece, piece.fromMm, piece.toMm)));
}
