import { type ArcSegment, type LineSegment, radiusOnSegmentMm, type Segment } from "./outline.ts";

/** A stretch of the axis, in mm from the tip. */
export type Stretch = { readonly fromMm: number; readonly toMm: number };

/** Integrals of powers of the radius over a stretch of one segment, in powers of mm. */
export type Moments = {
  /** ∫ r dt */
  readonly radius: number;
  /** ∫ r² dt */
  readonly radius2: number;
  /** ∫ t·r² dt, t from the tip */
  readonly firstRadius2: number;
  /** ∫ r⁴ dt */
  readonly radius4: number;
};

/**
 * The parts of a stretch in which the segment's radius is greater than `radiusMm`. At most two, in order;
 * the ends are exact (a straight line or a circle meets a parallel to the axis in closed form).
 * @example
 * const segment = { kind: "line", fromMm: 0, toMm: 10, startRadiusMm: 0, endRadiusMm: 10, role: "edge" };
 * stretchesAbove(segment, segment, 4) // → [{ fromMm: 4, toMm: 10 }]
 */
export function stretchesAbove(segment: Segment, within: Stretch, radiusMm: number): Stretch[] {
  const fromMm = Math.max(segment.fromMm, within.fromMm);
  const toMm = Math.min(segment.toMm, within.toMm);
  if (!(toMm > fromMm)) return [];
  if (segment.kind === "line") return lineAbove(segment, fromMm, toMm, radiusMm);
  const { centreMm, centreRadiusMm, arcRadiusMm, side } = segment;
  const halfChordMm = side * (radiusMm - centreRadiusMm);
  // Outward arc: above if its half chord is longer. Inward arc: above if it is shorter.
  if (side === 1 && halfChordMm <= 0) return [{ fromMm, toMm }];
  if (side === -1 && halfChordMm <= 0) return [];
  if (halfChordMm >= arcRadiusMm) return side === 1 ? [] : [{ fromMm, toMm }];
  const reachMm = Math.sqrt(arcRadiusMm * arcRadiusMm - halfChordMm * halfChordMm);
  const inner = { fromMm: centreMm - reachMm, toMm: centreMm + reachMm };
  const parts =
    side === 1
      ? [inner]
      : [
          { fromMm, toMm: inner.fromMm },
          { fromMm: inner.toMm, toMm },
        ];
  return parts
    .map((part) => ({ fromMm: Math.max(fromMm, part.fromMm), toMm: Math.min(toMm, part.toMm) }))
    .filter((part) => part.toMm > part.fromMm);
}

/**
 * Area in mm² between a segment and a parallel to the axis at `radiusMm`, over the part of a stretch where the
 * segment is the farther out: ∫ max(0, r − radiusMm) dt in closed form.
 */
export function areaBeyondMm2(segment: Segment, fromMm: number, toMm: number, radiusMm: number): number {
  const from = Math.max(segment.fromMm, fromMm);
  const to = Math.min(segment.toMm, toMm);
  if (!(to > from)) return 0;
  return segment.kind === "line"
    ? lineAreaBeyondMm2(segment, from, to, radiusMm)
    : arcAreaBeyondMm2(segment, from, to, radiusMm);
}

/** All the moments of one segment over a stretch inside it. */
export function moments(segment: Segment, stretch: Stretch): Moments {
  return segment.kind === "line" ? lineMoments(segment, stretch) : arcMoments(segment, stretch);
}

function lineAbove(segment: LineSegment, fromMm: number, toMm: number, radiusMm: number): Stretch[] {
  const startMm = radiusOnSegmentMm(segment, fromMm) - radiusMm;
  const endMm = radiusOnSegmentMm(segment, toMm) - radiusMm;
  if (startMm <= 0 && endMm <= 0) return [];
  if (startMm >= 0 && endMm >= 0) return [{ fromMm, toMm }];
  const crossingMm = fromMm + ((toMm - fromMm) * startMm) / (startMm - endMm);
  return startMm > 0 ? [{ fromMm, toMm: crossingMm }] : [{ fromMm: crossingMm, toMm }];
}

function lineAreaBeyondMm2(segment: LineSegment, fromMm: number, toMm: number, radiusMm: number): number {
  const start = radiusOnSegmentMm(segment, fromMm) - radiusMm;
  const end = radiusOnSegmentMm(segment, toMm) - radiusMm;
  const lengthMm = toMm - fromMm;
  if (start >= 0 && end >= 0) return ((start + end) / 2) * lengthMm;
  if (start <= 0 && end <= 0) return 0;
  // A triangle is left, from the crossing to the end that stands out.
  const out = Math.max(start, end);
  return (out * out * lengthMm) / (2 * Math.abs(start - end));
}

function arcAreaBeyondMm2(segment: ArcSegment, fromMm: number, toMm: number, radiusMm: number): number {
  const { centreMm, centreRadiusMm, arcRadiusMm, side } = segment;
  const halfChordMm = side * (radiusMm - centreRadiusMm);
  const from = fromMm - centreMm;
  const to = toMm - centreMm;
  if (side === 1) {
    if (halfChordMm >= arcRadiusMm) return 0;
    const reach = halfChordMm <= 0 ? arcRadiusMm : halfChord(halfChordMm, arcRadiusMm);
    return arcArea(segment, Math.max(from, -reach), Math.min(to, reach), radiusMm);
  }
  if (halfChordMm <= 0) return 0;
  if (halfChordMm >= arcRadiusMm) return arcArea(segment, from, to, radiusMm);
  const reach = halfChord(halfChordMm, arcRadiusMm);
  return (
    arcArea(segment, from, Math.min(to, -reach), radiusMm) +
    arcArea(segment, Math.max(from, reach), to, radiusMm)
  );
}

function arcArea(
  { centreRadiusMm, arcRadiusMm, side }: ArcSegment,
  u1: number,
  u2: number,
  radiusMm: number,
): number {
  if (!(u2 > u1)) return 0;
  const chords = chordIntegral(u2, arcRadiusMm) - chordIntegral(u1, arcRadiusMm);
  return (centreRadiusMm - radiusMm) * (u2 - u1) + side * chords;
}

function lineMoments(segment: LineSegment, { fromMm, toMm }: Stretch): Moments {
  const length = toMm - fromMm;
  const a = radiusOnSegmentMm(segment, fromMm);
  const b = radiusOnSegmentMm(segment, toMm);
  const radius2 = (length * (a * a + a * b + b * b)) / 3;
  // ∫ u r² du from the stretch's start, u = t − fromMm
  const fromStart = (length * length * (a * a + 2 * a * b + 3 * b * b)) / 12;
  return {
    radius: (length * (a + b)) / 2,
    radius2,
    firstRadius2: fromMm * radius2 + fromStart,
    radius4: (length * (a ** 4 + a ** 3 * b + a * a * b * b + a * b ** 3 + b ** 4)) / 5,
  };
}

/** r = c + s·q with q = √(R² − u²): each power of r is a sum of powers of u and of q·powers of u. */
function arcMoments(segment: ArcSegment, { fromMm, toMm }: Stretch): Moments {
  const { centreMm, centreRadiusMm: c, arcRadiusMm: R, side: s } = segment;
  const u1 = fromMm - centreMm;
  const u2 = toMm - centreMm;
  const power = (n: number) => (u2 ** (n + 1) - u1 ** (n + 1)) / (n + 1);
  const chord = chordIntegral(u2, R) - chordIntegral(u1, R);
  const chord1 = (halfChord(u1, R) ** 3 - halfChord(u2, R) ** 3) / 3;
  const chord2 = chordSecondIntegral(u2, R) - chordSecondIntegral(u1, R);
  const k = c * c + R * R;
  const radius2 = k * power(0) - power(2) + 2 * c * s * chord;
  const firstAboutCentre = k * power(1) - power(3) + 2 * c * s * chord1;
  return {
    radius: c * power(0) + s * chord,
    radius2,
    firstRadius2: centreMm * radius2 + firstAboutCentre,
    // r⁴ = (k − u²)² + 4cs·(k − u²)·q + 4c²·(R² − u²)
    radius4:
      k * k * power(0) -
      2 * k * power(2) +
      power(4) +
      4 * c * s * (k * chord - chord2) +
      4 * c * c * (R * R * power(0) - power(2)),
  };
}

function halfChord(u: number, arcRadius: number): number {
  return Math.sqrt(Math.max(0, arcRadius * arcRadius - u * u));
}

/** ∫ q du = ½(u·q + R²·asin(u/R)) */
function chordIntegral(u: number, arcRadius: number): number {
  return (u * halfChord(u, arcRadius) + arcRadius * arcRadius * arcAngle(u, arcRadius)) / 2;
}

/** ∫ u²·q du = ⅛(u·(2u² − R²)·q + R⁴·asin(u/R)) */
function chordSecondIntegral(u: number, arcRadius: number): number {
  const r2 = arcRadius * arcRadius;
  return (u * (2 * u * u - r2) * halfChord(u, arcRadius) + r2 * r2 * arcAngle(u, arcRadius)) / 8;
}

function arcAngle(u: number, arcRadius: number): number {
  return Math.asin(Math.max(-1, Math.min(1, u / arcRadius)));
}
