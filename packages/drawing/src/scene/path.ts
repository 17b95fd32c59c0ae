import type { Contour, Point } from "./contour.ts";
import { type Frame, onPaper } from "./frame.ts";
import type { Fill, LineStyle, PathItem, Shows } from "./scene.ts";

/** A path that shows something. */
export function path(
  shows: Shows,
  contours: readonly Contour[],
  line: LineStyle,
  fill: Fill = "none",
): PathItem {
  return { kind: "path", shows, contours, line, fill };
}

/** Straight lines from place to place; none of no places. */
export function polyline(points: readonly Point[], isClosed = false): Contour[] {
  const [start, ...rest] = points;
  return start === undefined ? [] : [{ start, pieces: rest.map((to) => ({ to })), isClosed }];
}

/** A rectangle between two corners. */
export function rectangle(one: Point, other: Point): Contour[] {
  return polyline([one, { xMm: other.xMm, yMm: one.yMm }, other, { xMm: one.xMm, yMm: other.yMm }], true);
}

/** A circle about a place. */
export function circle({ xMm, yMm }: Point, radiusMm: number): Contour[] {
  const places = [
    { xMm: xMm + radiusMm, yMm },
    { xMm, yMm: yMm + radiusMm },
    { xMm: xMm - radiusMm, yMm },
    { xMm, yMm: yMm - radiusMm },
  ];
  const [start = { xMm, yMm }, ...rest] = places;
  const pieces = [...rest, start].map((to) => ({ to, radiusMm, isClockwise: true }));
  return [{ start, pieces, isClosed: true }];
}

/** A rectangle of the world on paper. */
export function worldRectangle(
  frame: Frame,
  [leftMm, bottomMm]: readonly [number, number],
  [rightMm, topMm]: readonly [number, number],
): Contour[] {
  return rectangle(onPaper(frame, leftMm, bottomMm), onPaper(frame, rightMm, topMm));
}
