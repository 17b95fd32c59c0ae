import type { Outline, Segment } from "@rimwise/domain";
import polygonClipping, { type MultiPolygon, type Polygon, type Ring } from "polygon-clipping";

/** Chords to an arc: a 4000-sided one misses its circle by less than a part in a million of the section. */
const SAMPLES = 4000;

/** A rectangle of work. */
export function rectangle(fromX: number, toX: number, toZ: number): Polygon {
  return [
    [
      [fromX, 0],
      [toX, 0],
      [toX, toZ],
      [fromX, toZ],
    ],
  ];
}

/** The right half of the bit, x from `fence` in front of its axis outward, z up from the table: cutting edges only. */
export function cuttingPolygons(
  outline: Outline,
  heightMm: number,
  fenceMm = 0,
  samples = SAMPLES,
): Polygon[] {
  return outline
    .filter(({ role }) => role === "edge")
    .map((segment): Polygon => {
      const ring: Ring = places(segment, samples).map((t) => [radiusAt(segment, t) - fenceMm, heightMm - t]);
      ring.push([-1000, heightMm - segment.toMm], [-1000, heightMm - segment.fromMm]);
      return [ring];
    });
}

/** The whole bit: what cuts on both sides of the axis. */
export function wholePolygons(outline: Outline, heightMm: number, samples = SAMPLES): MultiPolygon {
  return outline
    .filter(({ role }) => role === "edge")
    .map((segment): Polygon => {
      const right: Ring = places(segment, samples).map((t) => [radiusAt(segment, t), heightMm - t]);
      const left: Ring = right.map(([x, z]): [number, number] => [-x, z]).reverse();
      return [[...right, ...left]];
    });
}

/** The radius of a segment, worked out here and not by the domain. */
export function radiusAt(segment: Segment, t: number): number {
  if (segment.kind === "line") {
    return (
      segment.startRadiusMm +
      ((segment.endRadiusMm - segment.startRadiusMm) * (t - segment.fromMm)) / (segment.toMm - segment.fromMm)
    );
  }
  return (
    segment.centreRadiusMm +
    segment.side * Math.sqrt(Math.max(0, segment.arcRadiusMm ** 2 - (t - segment.centreMm) ** 2))
  );
}

/** Places along a segment, closer together towards the ends, where an arc may run square to the axis. */
export function places(segment: Segment, samples = SAMPLES): number[] {
  const count = segment.kind === "line" ? 1 : samples;
  return Array.from({ length: count + 1 }, (_, i) => {
    const along = (1 - Math.cos((Math.PI * i) / count)) / 2;
    return segment.fromMm + (segment.toMm - segment.fromMm) * along;
  });
}

/** The area of polygons, holes taken off. */
export function area(polygons: readonly Polygon[]): number {
  return polygons.reduce(
    (sum, rings) => sum + rings.reduce((inner, ring, i) => inner + (i === 0 ? 1 : -1) * ringArea(ring), 0),
    0,
  );
}

/** The parts of each of these polygons that lie in another. */
export function sharedWith(polygons: readonly Polygon[], other: Polygon): MultiPolygon {
  return polygons.flatMap((polygon) => polygonClipping.intersection(polygon, other));
}

/**
 * The area that is in one or the other but not in both. Corners are put on a grid of a millionth: the library loses its way
 * among corners that differ in their last bit.
 */
export function differenceArea(one: MultiPolygon, other: MultiPolygon): number {
  return area(polygonClipping.xor(onGrid(one), onGrid(other)));
}

function onGrid(polygons: MultiPolygon): MultiPolygon {
  const snapped = (value: number) => Math.round(value * 1e6) / 1e6;
  return polygons.map((rings) => rings.map((ring) => ring.map(([x, z]) => [snapped(x), snapped(z)])));
}

function ringArea(ring: Ring): number {
  let twice = 0;
  ring.forEach(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y];
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}
