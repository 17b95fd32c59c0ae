import type { Point } from "../scene/contour.ts";
import { type Frame, onPaper } from "../scene/frame.ts";
import { path, polyline } from "../scene/path.ts";
import type { PathItem } from "../scene/scene.ts";

/** How far a break line stands out past the thing, and how high its one zigzag is, mm of paper. */
const PAST_MM = 1.5;
const ZIGZAG_MM = 1.3;

/** The long thin line with a zigzag at which a drawing is broken off, over the edge that is not one. ISO 128, from memory. */
export function broken(
  frame: Frame,
  [fromXMm, fromYMm]: readonly [number, number],
  [toXMm, toYMm]: readonly [number, number],
): PathItem[] {
  const from = onPaper(frame, fromXMm, fromYMm);
  const to = onPaper(frame, toXMm, toYMm);
  const lengthMm = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  const [alongX, alongY] = [(to.xMm - from.xMm) / lengthMm, (to.yMm - from.yMm) / lengthMm];
  const at = (along: number, off: number): Point => ({
    xMm: from.xMm + along * alongX - off * alongY,
    yMm: from.yMm + along * alongY + off * alongX,
  });
  const middle = lengthMm / 2;
  const places = [
    at(-PAST_MM, 0),
    at(middle - ZIGZAG_MM / 2, 0),
    at(middle - ZIGZAG_MM / 4, ZIGZAG_MM),
    at(middle + ZIGZAG_MM / 4, -ZIGZAG_MM),
    at(middle + ZIGZAG_MM / 2, 0),
    at(lengthMm + PAST_MM, 0),
  ];
  // The edge itself is covered: the thing goes on there.
  return [
    path({ of: "break" }, polyline([at(0, 0), at(lengthMm, 0)]), "erased"),
    path({ of: "break" }, polyline(places), "thin"),
  ];
}
