import type { Point } from "./contour.ts";

/** Where the world lies on the paper: its origin, and how many mm of paper one mm of it takes along each axis. */
export type Frame = {
  readonly originXMm: number;
  readonly originYMm: number;
  /** Negative if the axis points to the left, or up. */
  readonly scaleX: number;
  readonly scaleY: number;
};

/**
 * A place of the world on paper, both mm.
 * @example
 * onPaper({ originXMm: 10, originYMm: 50, scaleX: 2, scaleY: -2 }, 3, 4) // → { xMm: 16, yMm: 42 }
 */
export function onPaper(frame: Frame, xMm: number, yMm: number): Point {
  return { xMm: frame.originXMm + frame.scaleX * xMm, yMm: frame.originYMm + frame.scaleY * yMm };
}

/**
 * A place on paper in the world, both mm: what `onPaper` undoes.
 * @example
 * inWorld({ originXMm: 10, originYMm: 50, scaleX: 2, scaleY: -2 }, { xMm: 16, yMm: 42 }) // → { xMm: 3, yMm: 4 }
 */
export function inWorld(frame: Frame, { xMm, yMm }: Point): Point {
  return { xMm: (xMm - frame.originXMm) / frame.scaleX, yMm: (yMm - frame.originYMm) / frame.scaleY };
}
