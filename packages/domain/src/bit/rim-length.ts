import { stretchesAbove } from "./moments.ts";
import { type Outline, radiusOnSegmentMm, type Segment } from "./outline.ts";
import type { BitSetting } from "./section.ts";

type Engaged = {
  readonly fromMm: number;
  readonly toMm: number;
  /** Width cut at either end. */
  readonly startMm: number;
  readonly endMm: number;
  readonly lengthMm: number;
};

/** Two ends nearer than this along the axis are one place, mm: rounding. */
const SAME_PLACE_MM = 1e-9;

/**
 * Length in mm of the cutting outline in use at a setting: along its straight (√(Δt² + Δr²)) and circular (R·Δθ) segments and
 * across its square steps, wherever they bound the wood removed. Closed form; 0 if nothing is cut.
 * @example
 * const outline = formOutline({ kind: "cove", diameterMm: 38.1, radiusMm: 12.7 });
 * edgeLengthInUseMm(outline, { heightMm: 17.46, fenceMm: 6.35, thicknessMm: 19 }) // → 19.949
 */
export function edgeLengthInUseMm(outline: Outline, setting: BitSetting): number {
  const parts = engagedParts(outline, setting);
  const alongMm = parts.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  return alongMm + stepsMm(parts, setting);
}

function engagedParts(outline: Outline, { heightMm, fenceMm, thicknessMm }: BitSetting): Engaged[] {
  const within = { fromMm: heightMm - thicknessMm, toMm: heightMm };
  return outline
    .filter(({ role }) => role === "edge")
    .flatMap((segment) =>
      stretchesAbove(segment, within, fenceMm).map(({ fromMm, toMm }) => ({
        fromMm,
        toMm,
        startMm: radiusOnSegmentMm(segment, fromMm) - fenceMm,
        endMm: radiusOnSegmentMm(segment, toMm) - fenceMm,
        lengthMm: alongSegmentMm(segment, fromMm, toMm),
      })),
    );
}

function alongSegmentMm(segment: Segment, fromMm: number, toMm: number): number {
  if (segment.kind === "line") {
    return Math.hypot(toMm - fromMm, radiusOnSegmentMm(segment, toMm) - radiusOnSegmentMm(segment, fromMm));
  }
  const { centreMm, arcRadiusMm } = segment;
  const angleRad = (tMm: number) => Math.asin(Math.max(-1, Math.min(1, (tMm - centreMm) / arcRadiusMm)));
  return arcRadiusMm * (angleRad(toMm) - angleRad(fromMm));
}

/** Steps square to the axis between parts, and at the ends of parts that lie inside the work. */
function stepsMm(parts: readonly Engaged[], { heightMm, thicknessMm }: BitSetting): number {
  const isInside = (tMm: number) =>
    tMm > heightMm - thicknessMm + SAME_PLACE_MM && tMm < heightMm - SAME_PLACE_MM;
  let sumMm = 0;
  let beforeMm = Number.NEGATIVE_INFINITY;
  let widthMm = 0;
  for (const { fromMm, toMm, startMm, endMm } of parts) {
    const isJoined = fromMm - beforeMm <= SAME_PLACE_MM;
    if (isJoined) sumMm += Math.abs(startMm - widthMm);
    else sumMm += widthMm + (isInside(fromMm) ? startMm : 0);
    beforeMm = toMm;
    widthMm = isInside(toMm) ? endMm : 0;
  }
  return sumMm + widthMm;
}
