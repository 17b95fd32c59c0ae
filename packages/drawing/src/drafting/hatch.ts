import type { Contour, Point } from "../scene/contour.ts";
import { path } from "../scene/path.ts";
import type { LineStyle, PathItem, Shows } from "../scene/scene.ts";

/** Parallel lines at each of these angles, so far apart. */
export type Hatch = {
  readonly anglesDeg: readonly number[];
  readonly spacingMm: number;
  readonly line: LineStyle;
};

/** Hatches that are told apart in black and white, by their direction before their spacing. */
const HATCHES: readonly Hatch[] = [
  { anglesDeg: [45], spacingMm: 1.6, line: "thin" },
  { anglesDeg: [-45], spacingMm: 1.6, line: "thin" },
  { anglesDeg: [0], spacingMm: 1.3, line: "thin" },
  { anglesDeg: [90], spacingMm: 1.3, line: "thin" },
  { anglesDeg: [45, -45], spacingMm: 2, line: "thin" },
  { anglesDeg: [0, 90], spacingMm: 1.8, line: "thin" },
  { anglesDeg: [45], spacingMm: 1.6, line: "medium" },
  { anglesDeg: [-45], spacingMm: 1.6, line: "medium" },
];

/** The hatch of one of several things in order, from 1: they begin again when there are more things than hatches, never in neighbours. */
export function hatchOf(number: number): Hatch {
  return HATCHES[(number - 1) % HATCHES.length] ?? METAL;
}

/** Metal in section: the table, the fence. */
export const METAL: Hatch = { anglesDeg: [30], spacingMm: 2.4, line: "thin" };

/** Where nothing may be done. */
export const FORBIDDEN: Hatch = { anglesDeg: [-45], spacingMm: 1.4, line: "thin" };

/** Shorter strokes are crumbs between two contours that nearly meet, mm. */
const LEAST_STROKE_MM = 0.08;
const RAD_PER_DEG = Math.PI / 180;

/** The strokes inside these contours, straight from corner to corner; inside is what an odd number of them surrounds. */
export function hatched(shows: Shows, contours: readonly Contour[], hatch: Hatch): PathItem {
  const strokes = hatch.anglesDeg.flatMap((deg) => strokesAt(contours, deg * RAD_PER_DEG, hatch.spacingMm));
  return path({ ...shows, of: `${shows.of}-hatch` }, strokes, hatch.line);
}

function strokesAt(contours: readonly Contour[], angleRad: number, spacingMm: number): Contour[] {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  // In turned axes the strokes run along u, one at each multiple of the spacing in v.
  const crossings = new Map<number, number[]>();
  for (const { start, pieces } of contours) {
    let from = pieces.at(-1)?.to ?? start;
    for (let index = -1; index < pieces.length; index += 1) {
      const to = index < 0 ? start : (pieces[index]?.to ?? start);
      addCrossings(crossings, from, to, cos, sin, spacingMm);
      from = to;
    }
  }
  const strokes: Contour[] = [];
  for (const [row, places] of crossings) {
    const v = row * spacingMm;
    if (places.length > 2) places.sort((one, other) => one - other);
    for (let index = 0; index + 1 < places.length; index += 2) {
      const [one = 0, other = 0] = [places[index], places[index + 1]];
      if (Math.abs(other - one) < LEAST_STROKE_MM) continue;
      const start = { xMm: one * cos - v * sin, yMm: one * sin + v * cos };
      const to = { xMm: other * cos - v * sin, yMm: other * sin + v * cos };
      strokes.push({ start, pieces: [{ to }], isClosed: false });
    }
  }
  return strokes;
}

/** Adds where a side crosses each row. A corner counts with the row above it alone, or a stroke would cross it twice. */
function addCrossings(
  crossings: Map<number, number[]>,
  from: Point,
  to: Point,
  cos: number,
  sin: number,
  spacingMm: number,
): void {
  const [fromV, toV] = [from.yMm * cos - from.xMm * sin, to.yMm * cos - to.xMm * sin];
  const first = Math.ceil(Math.min(fromV, toV) / spacingMm);
  const end = Math.ceil(Math.max(fromV, toV) / spacingMm);
  if (first >= end) return;
  const [fromU, toU] = [from.xMm * cos + from.yMm * sin, to.xMm * cos + to.yMm * sin];
  for (let row = first; row < end; row += 1) {
    const u = fromU + ((toU - fromU) * (row * spacingMm - fromV)) / (toV - fromV);
    const places = crossings.get(row);
    if (places === undefined) crossings.set(row, [u]);
    else places.push(u);
  }
}
