import type { Strip } from "../bit/removed-width.ts";
import { widthAtMm, widthOnStripMm } from "./half.ts";
import { type Stretch, sharedMm } from "./reach.ts";

/** A distance in mm, and the place where it is: x from the first half's edge into it, z from its face up. */
export type Placed = { readonly mm: number; readonly xMm: number; readonly zMm: number };

/** What lies between two walls: the widest gap, and the deepest place at which one is inside the other. 0 if there is none. */
export type BetweenWalls = { readonly gap: Placed; readonly overlap: Placed };

/** A point of a wall. */
type Point = { readonly x: number; readonly z: number };
type Line = { readonly from: Point; readonly to: Point };

/** Farther than any cut reaches, mm. */
const FAR_MM = 1000;

/** Distances are found to this, mm. */
const FOUND_TO_MM = 1e-4;

/**
 * The widest gap and the deepest overlap between a half and another that reaches so far into it: how far a place on one wall is from the
 * other wall at most, outside it and inside it. Neither is deeper than it lies under a face: a scratch of a face is no open joint.
 */
export function betweenWalls(wall: readonly Strip[], other: readonly Strip[], reachMm: number): BetweenWalls {
  const shared = sharedMm(wall, other);
  const mine = linesOf(wall, shared, (widthMm) => widthMm);
  const theirs = linesOf(other, shared, (widthMm) => reachMm - widthMm);
  const faces = [shared.fromMm, shared.toMm].map(faceAt);
  const [toMine, toTheirs] = [
    [...mine, ...faces],
    [...theirs, ...faces],
  ];
  const isInOther = ({ x, z }: Point) => x < reachMm - (widthAtMm(other, z) ?? reachMm);
  const isInMine = ({ x, z }: Point) => x > (widthAtMm(wall, z) ?? Number.POSITIVE_INFINITY);
  const farthest = (isInside: boolean) => {
    const found = { mm: 0, xMm: 0, zMm: 0 };
    for (const line of mine) search(line, toTheirs, (point) => isInOther(point) === isInside, found);
    for (const line of theirs) search(line, toMine, (point) => isInMine(point) === isInside, found);
    return found;
  };
  return { gap: farthest(false), overlap: farthest(true) };
}

/** A face of the work, farther to both sides than any joint. */
function faceAt(z: number): Line {
  return { from: { x: -FAR_MM, z }, to: { x: FAR_MM, z } };
}

/** A wall as lines, steps between strips among them. */
function linesOf(
  wall: readonly Strip[],
  { fromMm, toMm }: Stretch,
  placeMm: (widthMm: number) => number,
): Line[] {
  const lines: Line[] = [];
  let last: Point | undefined;
  for (const strip of wall) {
    const [low, high] = [Math.max(strip.fromMm, fromMm), Math.min(strip.toMm, toMm)];
    if (high <= low) continue;
    const from = { x: placeMm(widthOnStripMm(strip, low)), z: low };
    const to = { x: placeMm(widthOnStripMm(strip, high)), z: high };
    if (last !== undefined && last.x !== from.x) lines.push({ from: last, to: from });
    lines.push({ from, to });
    last = to;
  }
  return lines;
}

/**
 * Looks along a line for a place that counts and is farther from the other lines than what was found, halving the line where one may be.
 * The distance to one line is convex, so along a stretch it is no more than at the farther end of it.
 */
function search(
  { from, to }: Line,
  others: readonly Line[],
  counts: (point: Point) => boolean,
  found: { mm: number; xMm: number; zMm: number },
): void {
  let mostMm = Number.POSITIVE_INFINITY;
  let hereMm = Number.POSITIVE_INFINITY;
  const middle = { x: (from.x + to.x) / 2, z: (from.z + to.z) / 2 };
  for (const other of others) {
    mostMm = Math.min(mostMm, Math.max(distanceMm(from, other), distanceMm(to, other)));
    hereMm = Math.min(hereMm, distanceMm(middle, other));
  }
  if (hereMm > found.mm && counts(middle)) {
    Object.assign(found, { mm: hereMm, xMm: middle.x, zMm: middle.z });
  }
  const halfMm = Math.hypot(to.x - from.x, to.z - from.z) / 2;
  // So far from the wall on the other side of it, no place near is deep on this one.
  const acrossMm = counts(middle) ? mostMm : halfMm - hereMm;
  if (Math.min(mostMm, acrossMm) <= found.mm + FOUND_TO_MM || halfMm <= FOUND_TO_MM) return;
  search({ from, to: middle }, others, counts, found);
  search({ from: middle, to }, others, counts, found);
}

function distanceMm(point: Point, { from, to }: Line): number {
  const [dx, dz] = [to.x - from.x, to.z - from.z];
  const squared = dx * dx + dz * dz;
  const along = squared === 0 ? 0 : ((point.x - from.x) * dx + (point.z - from.z) * dz) / squared;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - share * dx, point.z - from.z - share * dz);
}
