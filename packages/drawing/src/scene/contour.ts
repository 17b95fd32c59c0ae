/** A place on paper, mm from its upper left corner. */
export type Point = { readonly xMm: number; readonly yMm: number };

/** One line of a path: a start, and pieces that each go on from where the last one ended. */
export type Contour = {
  readonly start: Point;
  readonly pieces: readonly Piece[];
  readonly isClosed: boolean;
};

/** Straight to a place; or on an arc of less than half a turn, clockwise on paper or the other way. */
export type Piece =
  | { readonly to: Point }
  | { readonly to: Point; readonly radiusMm: number; readonly isClockwise: boolean };
