import { type Outline, radiusOnSegmentMm, type Segment, segmentSpanMm } from "./outline.ts";

/** Outlines are typed to hundredths: what narrows by less than this does not narrow, mm. */
const TYPED_SLACK_MM = 0.01;

/**
 * Whether some cutting edge has something narrower between it and the shank, as a dovetail has. Such a bit stands in the
 * wood it leaves behind: it cannot be raised or lowered in the cut, nor make it in passes of rising height; only the
 * fence can take it in steps.
 * @example
 * isUndercut(formOutline({ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 12 })) // → true
 */
export function isUndercut(outline: Outline): boolean {
  let widestEdgeMm = 0;
  for (const segment of outline) {
    const startMm = radiusOnSegmentMm(segment, segment.fromMm);
    if (startMm < widestEdgeMm - TYPED_SLACK_MM) return true;
    // A body behind an edge does not cut, however wide it is: raised, it would rub.
    if (segment.role === "body" && widestEdgeMm > 0) return true;
    if (segment.role !== "edge") continue;
    if (narrowingMm(segment) > TYPED_SLACK_MM) return true;
    widestEdgeMm = Math.max(widestEdgeMm, segmentSpanMm(segment).greatestMm);
  }
  return false;
}

/**
 * Whether the bit cuts as a plain cylinder: every edge parallel to the axis at one radius, and nothing narrower before the
 * shank. It cuts its full width from the first touch.
 * @example
 * const outline = formOutline({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 });
 * isParallel(outline) // → true
 */
export function isParallel(outline: Outline): boolean {
  const spans = outline.filter(({ role }) => role === "edge").map(segmentSpanMm);
  const leastMm = Math.min(...spans.map((span) => span.leastMm));
  const greatestMm = Math.max(...spans.map((span) => span.greatestMm));
  return greatestMm - leastMm <= TYPED_SLACK_MM && !isUndercut(outline);
}

/** How far a segment falls back toward the axis on its way to the shank, mm. */
function narrowingMm(segment: Segment): number {
  const { leastMm, greatestMm } = segmentSpanMm(segment);
  const startMm = radiusOnSegmentMm(segment, segment.fromMm);
  const endMm = radiusOnSegmentMm(segment, segment.toMm);
  if (segment.kind === "line") return startMm - endMm;
  // An outward arc rises, then falls; an inward one falls, then rises.
  return segment.side === 1 ? greatestMm - endMm : startMm - leastMm;
}
