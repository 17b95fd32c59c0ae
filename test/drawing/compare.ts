import { type BitSetting, type Outline, outlineLengthMm, radiusOnSegmentMm } from "@rimwise/domain";
import type { Point } from "@rimwise/drawing";

/** What a drawing is held to, mm in the world. */
export const DRAWN_TO_MM = 0.01;

/** A path is written to a thousandth of a millimetre of paper; what that is in the world depends on the scale, and is allowed beside. */
export const WRITTEN_MM = 0.002;

/** How far a place at this radius and distance from the tip lies from an outline with its steps, mm. */
export function offOutlineMm(outline: Outline, radiusMm: number, tMm: number): number {
  const lengthMm = outlineLengthMm(outline);
  let off = Math.max(-tMm, tMm - lengthMm, 0);
  const near = outline.filter(({ fromMm, toMm }) => tMm >= fromMm - DRAWN_TO_MM && tMm <= toMm + DRAWN_TO_MM);
  const radii = near.flatMap((segment) => {
    const at = (mm: number) =>
      radiusOnSegmentMm(segment, Math.min(segment.toMm, Math.max(segment.fromMm, mm)));
    return [at(tMm - DRAWN_TO_MM), at(tMm), at(tMm + DRAWN_TO_MM)];
  });
  // At a step, the tip and the foot everything between the radii is on the outline.
  const isAtEnd = tMm < DRAWN_TO_MM || tMm > lengthMm - DRAWN_TO_MM;
  const least = isAtEnd ? 0 : Math.min(...radii);
  off = Math.max(off, least - radiusMm, radiusMm - Math.max(...radii));
  return off;
}

/** How wide the cut is at a height after several settings, by the outline itself: what any of them took. */
export function goneMm(outline: Outline, settings: readonly BitSetting[], zMm: number): number {
  let widest = 0;
  for (const { heightMm, fenceMm } of settings) {
    const tMm = heightMm - zMm;
    for (const segment of outline) {
      if (segment.role !== "edge" || tMm < segment.fromMm || tMm > segment.toMm) continue;
      widest = Math.max(widest, radiusOnSegmentMm(segment, tMm) - fenceMm);
    }
  }
  return widest;
}

/** How far a place lies from the nearest side of these rings, mm. */
export function offRingsMm(rings: readonly (readonly Point[])[], { xMm, yMm }: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of rings) {
    let from = ring.at(-1);
    for (const to of ring) {
      if (from !== undefined) least = Math.min(least, offLineMm(from, to, xMm, yMm));
      from = to;
    }
  }
  return least;
}

/** Area inside one ring, mm². */
export function areaMm2(ring: readonly Point[]): number {
  let sum = 0;
  let from = ring.at(-1);
  for (const to of ring) {
    if (from !== undefined) sum += from.xMm * to.yMm - to.xMm * from.yMm;
    from = to;
  }
  return Math.abs(sum) / 2;
}

/** Whether an odd number of rings surrounds a place. */
export function isInside(rings: readonly (readonly Point[])[], { xMm, yMm }: Point): boolean {
  let crossings = 0;
  for (const ring of rings) {
    let from = ring.at(-1);
    for (const to of ring) {
      if (from !== undefined && from.yMm <= yMm !== to.yMm <= yMm) {
        const atMm = from.xMm + ((to.xMm - from.xMm) * (yMm - from.yMm)) / (to.yMm - from.yMm);
        if (atMm > xMm) crossings += 1;
      }
      from = to;
    }
  }
  return crossings % 2 === 1;
}

function offLineMm(from: Point, to: Point, xMm: number, yMm: number): number {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((xMm - from.xMm) * dx + (yMm - from.yMm) * dy) / squared;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(xMm - from.xMm - share * dx, yMm - from.yMm - share * dy);
}
