/**
 * The outline of a bit: its radius r as a function of the distance t from the tip, as straight
 * and circular segments in order of rising t. A step (a flat face square to the axis) is the
 * jump between one segment's end and the next one's start.
 */
export type Outline = readonly Segment[];

export type Segment = LineSegment | ArcSegment;

/** r runs straight from (fromMm, startRadiusMm) to (toMm, endRadiusMm). */
export type LineSegment = {
  readonly kind: "line";
  readonly fromMm: number;
  readonly toMm: number;
  readonly startRadiusMm: number;
  readonly endRadiusMm: number;
  readonly role: SegmentRole;
};

/** r = centreRadiusMm + side·√(arcRadiusMm² − (t − centreMm)²): side 1 bulges outward, −1 inward. */
export type ArcSegment = {
  readonly kind: "arc";
  readonly fromMm: number;
  readonly toMm: number;
  readonly centreMm: number;
  readonly centreRadiusMm: number;
  readonly arcRadiusMm: number;
  readonly side: 1 | -1;
  readonly role: SegmentRole;
};

/** Cutting edge, pilot bearing, or plain body that must not touch the work. */
export type SegmentRole = "edge" | "pilot" | "body";

/** A place on an arc this near to the arc's end along the axis is that end, mm. */
const END_ROUNDING_MM = 1e-12;

/** A straight segment; a cutting edge unless said otherwise. */
export function line(
  fromMm: number,
  toMm: number,
  startRadiusMm: number,
  endRadiusMm: number = startRadiusMm,
  role: SegmentRole = "edge",
): LineSegment {
  return { kind: "line", fromMm, toMm, startRadiusMm, endRadiusMm, role };
}

/** A circular cutting segment about (centreMm, centreRadiusMm). */
export function arc(
  fromMm: number,
  toMm: number,
  circle: { centreMm: number; centreRadiusMm: number; arcRadiusMm: number; side: 1 | -1 },
): ArcSegment {
  return { kind: "arc", fromMm, toMm, ...circle, role: "edge" };
}

/**
 * The outline's radius in mm at distance `tMm` from the tip, on one segment that reaches there: straight between its ends, or on
 * its circle.
 * @example
 * const segment = { kind: "line", fromMm: 0, toMm: 10, startRadiusMm: 0, endRadiusMm: 10, role: "edge" };
 * radiusOnSegmentMm(segment, 4) // → 4
 */
export function radiusOnSegmentMm(segment: Segment, tMm: number): number {
  if (segment.kind === "line") {
    const lengthMm = segment.toMm - segment.fromMm;
    if (lengthMm === 0) return Math.max(segment.startRadiusMm, segment.endRadiusMm);
    const along = (tMm - segment.fromMm) / lengthMm;
    return segment.startRadiusMm + (segment.endRadiusMm - segment.startRadiusMm) * along;
  }
  const u = tMm - segment.centreMm;
  // Where an arc ends square to the axis, rounding in t would show a million times over in r.
  const isAtEnd = segment.arcRadiusMm - Math.abs(u) < END_ROUNDING_MM;
  const halfChordMm = isAtEnd ? 0 : Math.sqrt(segment.arcRadiusMm * segment.arcRadiusMm - u * u);
  return segment.centreRadiusMm + segment.side * halfChordMm;
}

/**
 * Least and greatest radius in mm that one segment reaches between its ends.
 * @example
 * const segment = { kind: "line", fromMm: 0, toMm: 10, startRadiusMm: 3, endRadiusMm: 10, role: "edge" };
 * segmentSpanMm(segment) // → { leastMm: 3, greatestMm: 10 }
 */
export function segmentSpanMm(segment: Segment): { readonly leastMm: number; readonly greatestMm: number } {
  const radiiMm = [radiusOnSegmentMm(segment, segment.fromMm), radiusOnSegmentMm(segment, segment.toMm)];
  // An outward arc is widest over its centre, an inward one narrowest.
  if (segment.kind === "arc" && segment.centreMm > segment.fromMm && segment.centreMm < segment.toMm) {
    radiiMm.push(radiusOnSegmentMm(segment, segment.centreMm));
  }
  return { leastMm: Math.min(...radiiMm), greatestMm: Math.max(...radiiMm) };
}

/**
 * Where the cutting edges begin, mm from the tip: past a bearing that sits there, else 0.
 * @example
 * const outline = formOutline({ kind: "round-over", diameterMm: 25.4, radiusMm: 6.35, pilotHeightMm: 5 });
 * edgesFromMm(outline) // → 5
 */
export function edgesFromMm(outline: Outline): number {
  return outline.find(({ role }) => role === "edge")?.fromMm ?? 0;
}

/**
 * Length of the outline along the axis, mm: from the tip to the end of the last segment; 0 of an empty one.
 * @example
 * const outline = formOutline({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 });
 * outlineLengthMm(outline) // → 25.4
 */
export function outlineLengthMm(outline: Outline): number {
  return outline.at(-1)?.toMm ?? 0;
}
