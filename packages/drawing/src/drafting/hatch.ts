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
export const HATCHES: readonly Hatch[] = [
  { anglesDeg: [45], spacingMm: 1.6, line: "thin" },
  { anglesDeg: [-45], spacingMm: 1.6, line: "thin" },
  { anglesDeg: [0], spacingMm: 1.3, line: "thin" },
  { anglesDeg: [90], spacingMm: 1.3, line: "thin" },
  { anglesDeg: [45, -45], spacingMm: 2, line: "thin" },
  { anglesDeg: [0, 90], spacingMm: 1.8, line: "thin" },
  { anglesDeg: [45], spacingMm: 1.6, line: "medium" },
  { anglesDeg: [-45], spacingMm: 1.6, line: "medium" },
];

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
  for (const contour of contours) {
    const corners = cornersOf(contour);
    let from = corners.at(-1);
    for (const to of corners) {
      if (from !== undefined) addCrossings(crossings, from, to, { cos, sin, spacingMm });
      from = to;
    }
  }
  const strokes: Contour[] = [];
  for (const [row, places] of crossings) {
    const v = row * spacingMm;
    const place = (u: number): Point => ({ xMm: u * cos - v * sin, yMm: u * sin + v * cos });
    places.sort((one, other) => one - other);
    for (let index = 0; index + 1 < places.length; index += 2) {
      const [from = 0, to = 0] = [places[index], places[index + 1]];
      if (to - from < LEAST_STROKE_MM) continue;
      strokes.push({ start: place(from), pieces: [{ to: place(to) }], isClosed: false });
    }
  }
  return strokes;
}

function addCrossings(
  crossings: Map<number, number[]>,
  from: Point,
  to: Point,
  { cos, sin, spacingMm }: { readonly cos: number; readonly sin: number; readonly spacingMm: number },
): void {
  const [fromV, toV] = [from.yMm * cos - from.xMm * sin, to.yMm * cos - to.xMm * sin];
  if (fromV === toV) return;
  const [fromU, toU] = [from.xMm * cos + from.yMm * sin, to.xMm * cos + to.yMm * sin];
  const last = Math.ceil(Math.max(fromV, toV) / spacingMm);
  // A corner counts with the line above it alone, or a stroke would cross it twice.
  for (let row = Math.ceil(Math.min(fromV, toV) / spacingMm); row < last; row += 1) {
    const u = fromU + ((toU - fromU) * (row * spacingMm - fromV)) / (toV - fromV);
    const places = crossings.get(row);
    if (places === undefined) crossings.set(row, [u]);
    else places.push(u);
  }
}

function cornersOf({ start, pieces }: Contour): Point[] {
  return [start, ...pieces.map(({ to }) => to)];
}
