import type { Presentation, WantedPath } from "@rimwise/domain";
import type { Pair } from "polygon-clipping";
import { wasteOfPath } from "../properties/wanted-paths.ts";
import { type Cut, reachesOf, topOf } from "./planted.ts";
import type { rackOf } from "./search-rack.ts";

/** Heights of the work that each height of the bit is judged at, mm apart; and so wide is the grid of the bit's heights. */
const PLACES_MM = 0.05;
const GRID_MM = 0.02;

type Bit = ReturnType<typeof rackOf>[number];

/** A wall as it is seen in one presentation, at places along its height. */
type Sampled = {
  readonly heights: readonly number[];
  readonly depths: readonly number[];
  readonly wall: readonly Pair[];
};

/**
 * The heights on a fine grid at which a bit makes a wall within tolerance, by trying each: the fence comes forward until the bit touches the wall at some
 * place, and the farthest that anything is left from the wall is looked for. Knows nothing of corners, slopes or bounds.
 */
export function gridHeights(
  bit: Bit,
  presentation: Presentation,
  path: WantedPath,
  toleranceMm: number,
): number[] {
  const sampled = sampledWall(presentation, path);
  if (sampled === undefined) return [];
  const lengthMm = bit.outline.at(-1)?.toMm ?? 0;
  const count = Math.floor(lengthMm / GRID_MM);
  return Array.from({ length: count }, (_, index) => (index + 1) * GRID_MM).filter((heightMm) =>
    isMade({ bit, ...presentation, heightMm, fenceMm: 0 }, sampled, path.thicknessMm, toleranceMm),
  );
}

function isMade(
  cut: Cut,
  { heights, depths, wall }: Sampled,
  thicknessMm: number,
  toleranceMm: number,
): boolean {
  const reaches = reachesOf(cut, thicknessMm);
  const radii = heights.map((z) =>
    Math.max(
      -Infinity,
      ...reaches.flatMap(({ fromMm, toMm, depthAt }) => (z >= fromMm && z <= toMm ? [depthAt(z)] : [])),
    ),
  );
  const topMm = topOf(cut, thicknessMm);
  const bodies = cut.bit.outline.flatMap((segment) =>
    segment.role === "body" &&
    segment.kind === "line" &&
    segment.toMm > cut.heightMm - topMm &&
    segment.fromMm < cut.heightMm
      ? [segment.startRadiusMm]
      : [],
  );
  const touching = radii.map((radius, index) => radius - (depths[index] ?? 0));
  const fenceMm = Math.max(0, cut.bit.pilotRadiusMm ?? 0, ...bodies, ...touching);
  return heights.every((z, index) => {
    const removed = Math.max(0, (radii[index] ?? 0) - fenceMm);
    const wanted = depths[index] ?? 0;
    if (removed >= wanted - toleranceMm) return true;
    return wall.some(([depth, height]) => Math.hypot(depth - removed, height - z) <= toleranceMm);
  });
}

/** The wall's depth at each place, by where a level line through the polygon of the waste leaves it; undefined if it leaves it twice. */
function sampledWall({ work, face }: Presentation, path: WantedPath): Sampled | undefined {
  const turn = ([x, z]: Pair): Pair =>
    work === "flat" ? [x, z] : [face === "front" ? z : path.thicknessMm - z, x];
  const ring = wasteOfPath(path)[0]?.[0]?.map(turn) ?? [];
  const edges = ring.map((one, index) => [one, ring[(index + 1) % ring.length] ?? one] as const);
  const reachMm = Math.max(...ring.map(([, height]) => height));
  const topMm = work === "flat" ? path.thicknessMm : reachMm + 5;
  const heights: number[] = [];
  const depths: number[] = [];
  for (let z = PLACES_MM / 2 + 1e-4; z < topMm; z += PLACES_MM) {
    const crossed = edges
      .filter(([[, a], [, b]]) => a < z !== b < z)
      .map(([[ax, az], [bx, bz]]) => ax + ((z - az) / (bz - az)) * (bx - ax))
      .sort((a, b) => a - b);
    if (crossed.length > 2 || (crossed[0] ?? 0) > 1e-9) return undefined;
    heights.push(z);
    depths.push(crossed[1] ?? 0);
  }
  const onSurface = (p: Pair, q: Pair) =>
    Math.max(p[0], q[0]) < 1e-9 ||
    (work === "flat" && (Math.max(p[1], q[1]) < 1e-9 || Math.min(p[1], q[1]) > topMm - 1e-9));
  // Dense points along the wall, closer than what is decided by them.
  const wall = edges
    .filter(([one, other]) => !onSurface(one, other))
    .flatMap(([one, other]) => {
      const steps = Math.ceil(Math.hypot(other[0] - one[0], other[1] - one[1]) / 0.01);
      return Array.from(
        { length: steps + 1 },
        (_, i): Pair => [
          one[0] + ((other[0] - one[0]) * i) / Math.max(1, steps),
          one[1] + ((other[1] - one[1]) * i) / Math.max(1, steps),
        ],
      );
    });
  return { heights, depths, wall };
}
