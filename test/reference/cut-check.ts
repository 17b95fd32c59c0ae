import type { ProfileSearch, SearchSetting, WantedPath } from "@rimwise/domain";
import polygonClipping, { type MultiPolygon, type Pair, type Polygon } from "polygon-clipping";
import { wasteOfPath } from "../properties/wanted-paths.ts";
import type { Cut } from "./planted.ts";
import { cuttingPolygons } from "./polygons.ts";
import type { rackOf } from "./search-rack.ts";

/** Chords to each arc of a bit. */
const CHORDS = 100;

/**
 * The grids that corners are put on, mm: the library loses its way among nearly equal ones, and then a coarser grid is tried.
 */
const GRIDS_MM = [1e-6, 1e-5, 1e-4] as const;

/** Nearer to the stock's surface than this is on it, mm. */
const ON_SURFACE_MM = 2e-6;

/** How far into the board is looked, mm. */
const FAR_MM = 300;

/** Places looked at along each edge of what is left, mm apart. */
const APART_MM = 0.02;

/** Chords against arcs leave slivers: cuts are moved this much to and fro, so that none of them is left, mm. */
const SLIVER_MM = 0.003;

/** How a cut is moved: up and into the work. */
export type Moved = { readonly upMm: number; readonly inMm: number };

const MOVED_FORWARD: readonly Moved[] = [
  { upMm: SLIVER_MM, inMm: SLIVER_MM },
  { upMm: -SLIVER_MM, inMm: SLIVER_MM },
];
const MOVED_BACK: readonly Moved[] = MOVED_FORWARD.map(({ upMm, inMm }) => ({ upMm, inMm: -inMm }));

/** How far into the wood a set of cuts goes past the wanted wall, and how far from it what they leave lies. */
export type Check = { readonly gougeMm: number; readonly leftMm: number };

/**
 * Looks at cuts with polygons alone: what they sweep, clipped to the stock, against the waste of the wanted path. Chords miss
 * the arcs by up to about R·(π/(4·CHORDS))²/2, a thousandth of a millimetre at 30 mm.
 */
export function checkCuts(path: WantedPath, cuts: readonly Cut[]): Check {
  for (const gridMm of GRIDS_MM) {
    try {
      return checkOnGrid(path, cuts, gridMm);
    } catch (error) {
      if (gridMm === GRIDS_MM.at(-1) || !String(error).includes("output ring")) throw error;
    }
  }
  throw new Error("no grid");
}

function checkOnGrid(path: WantedPath, cuts: readonly Cut[], gridMm: number): Check {
  const waste = onGrid(wasteOfPath(path), gridMm);
  const stock: Polygon = [
    [
      [0, 0],
      [FAR_MM, 0],
      [FAR_MM, path.thicknessMm],
      [0, path.thicknessMm],
    ],
  ];
  const surface = edgesOf([stock]).filter(([one, other]) => Math.min(one[0], other[0]) < FAR_MM);
  const wall = edgesOf(waste).filter((edge) => !isOnSurface(edge, path.thicknessMm));
  const swept = (cut: Cut, moved: Moved) => onGrid(sweptBy(cut, moved, path.thicknessMm), gridMm);
  // What a cut sweeps wherever it is moved to is less than it sweeps, and all that it sweeps when moved is more.
  const surelyGone = cuts.flatMap((cut) => {
    const [first = [], ...others] = MOVED_BACK.map((moved) => swept(cut, moved));
    return first.flatMap((polygon, index) =>
      others.reduce(
        (common: MultiPolygon, each) => polygonClipping.intersection(common, each[index] ?? []),
        polygonClipping.intersection([stock], polygon),
      ),
    );
  });
  const left = cuts
    .flatMap((cut) => MOVED_FORWARD.flatMap((moved) => swept(cut, moved)))
    .reduce((rest, each) => polygonClipping.difference(rest, each), waste);
  return {
    // Into the wood is as far as the nearest of all its boundary.
    gougeMm: farthestFrom(
      [...wall, ...surface],
      surelyGone.flatMap((each) => polygonClipping.difference(each, waste)),
    ),
    leftMm: farthestFrom(wall, left),
  };
}

/** The settings of a search as cuts. */
export function cutsOf(settings: readonly SearchSetting[], rack: ReturnType<typeof rackOf>): Cut[] {
  return settings.map(({ bitId, presentation, heightMm, fenceMm }) => {
    const bit = rack.find(({ id }) => id === bitId);
    if (bit === undefined) throw new Error(`no bit ${bitId}`);
    return { bit, ...presentation, heightMm, fenceMm };
  });
}

/** Every answer of a search, the sets of several set-ups too. */
export function answersOf({ oneSetup, together }: ProfileSearch): (readonly SearchSetting[])[] {
  return [...oneSetup.map((setting) => [setting]), ...together];
}

export function sweptBy(
  { bit, work, face, heightMm, fenceMm }: Cut,
  { upMm, inMm }: Moved,
  thicknessMm: number,
): Polygon[] {
  const place = ([depth, height]: Pair): Pair => {
    if (work === "flat") return [depth, face === "front" ? height : thicknessMm - height];
    return [height, face === "front" ? depth : thicknessMm - depth];
  };
  return cuttingPolygons(bit.outline, heightMm + upMm, fenceMm - inMm, CHORDS).map((rings) =>
    rings.map((ring) => ring.map(place)),
  );
}

/** The boundary of the waste is the wall but for where it runs along the stock's surface. */
function isOnSurface([one, other]: readonly [Pair, Pair], thicknessMm: number): boolean {
  return (
    Math.max(one[0], other[0]) < ON_SURFACE_MM ||
    Math.max(one[1], other[1]) < ON_SURFACE_MM ||
    Math.min(one[1], other[1]) > thicknessMm - ON_SURFACE_MM
  );
}

/** The farthest any place on the boundary of these polygons lies from a wall. */
function farthestFrom(wall: readonly (readonly [Pair, Pair])[], polygons: MultiPolygon): number {
  let farthest = 0;
  for (const polygon of polygons) {
    const edges = edgesOf([polygon]);
    for (const [one, other] of edges) {
      const steps = Math.ceil(lengthOf(one, other) / APART_MM);
      for (let i = 0; i < steps; i += 1) {
        const share = i / steps;
        const place: Pair = [one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1])];
        farthest = Math.max(farthest, distance(wall, place));
      }
    }
  }
  return farthest;
}

function lengthOf([ax, az]: Pair, [bx, bz]: Pair): number {
  return Math.hypot(bx - ax, bz - az);
}

function distance(wall: readonly (readonly [Pair, Pair])[], [x, z]: Pair): number {
  let least = Infinity;
  for (const [[ax, az], [bx, bz]] of wall) {
    const [dx, dz] = [bx - ax, bz - az];
    const along = Math.max(0, Math.min(1, ((x - ax) * dx + (z - az) * dz) / (dx * dx + dz * dz)));
    least = Math.min(least, Math.hypot(ax + along * dx - x, az + along * dz - z));
  }
  return least;
}

function edgesOf(polygons: MultiPolygon): (readonly [Pair, Pair])[] {
  return polygons.flatMap((rings) =>
    rings.flatMap((ring) =>
      ring.flatMap((one, i) => {
        const other = ring[(i + 1) % ring.length] ?? one;
        return one[0] === other[0] && one[1] === other[1] ? [] : [[one, other] as const];
      }),
    ),
  );
}

function onGrid(polygons: MultiPolygon, gridMm: number): MultiPolygon {
  const snapped = (value: number) => Math.round(value / gridMm) * gridMm;
  return polygons.map((rings) => rings.map((ring) => ring.map(([x, z]): Pair => [snapped(x), snapped(z)])));
}
