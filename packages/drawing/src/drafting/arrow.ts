import type { Point } from "../scene/contour.ts";
import { path, polyline } from "../scene/path.ts";
import type { PathItem } from "../scene/scene.ts";

const HEAD_MM = 3.4;
const HEAD_HALF_MM = 1.3;

/** A thick arrow from one place to another: something moves so. */
export function movement(of: string, from: Point, to: Point): PathItem[] {
  const lengthMm = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  const [x, y] = [(to.xMm - from.xMm) / lengthMm, (to.yMm - from.yMm) / lengthMm];
  const base = { xMm: to.xMm - x * HEAD_MM, yMm: to.yMm - y * HEAD_MM };
  return [
    path({ of }, polyline([from, base]), "heavy"),
    path({ of: `${of}-head` }, head(base, to), "none", "ink"),
  ];
}

/** An arrow around a place, over most of a turn: something turns so, seen from above. */
export function turning(of: string, middle: Point, radiusMm: number, isClockwise: boolean): PathItem[] {
  const at = (deg: number): Point => {
    const rad = (deg * Math.PI) / 180;
    return { xMm: middle.xMm + radiusMm * Math.cos(rad), yMm: middle.yMm + radiusMm * Math.sin(rad) };
  };
  // Degrees run clockwise on paper, whose y points down.
  const sign = isClockwise ? 1 : -1;
  const places = [120, 220, 320, 395].map((deg) => at(sign * deg));
  const [start = middle, ...rest] = places;
  const end = rest.at(-1) ?? start;
  const pieces = rest.map((to) => ({ to, radiusMm, isClockwise }));
  const tip = at(sign * (395 + (HEAD_MM / radiusMm) * (180 / Math.PI)));
  return [
    path({ of }, [{ start, pieces, isClosed: false }], "medium"),
    path({ of: `${of}-head` }, head(end, tip), "none", "ink"),
  ];
}

function head(base: Point, tip: Point) {
  const lengthMm = Math.hypot(tip.xMm - base.xMm, tip.yMm - base.yMm);
  const [x, y] = [(tip.xMm - base.xMm) / lengthMm, (tip.yMm - base.yMm) / lengthMm];
  const wing = (side: number): Point => ({
    xMm: base.xMm - side * y * HEAD_HALF_MM,
    yMm: base.yMm + side * x * HEAD_HALF_MM,
  });
  return polyline([tip, wing(1), wing(-1)], true);
}
