import { type ArcPiece, type LinePiece, type Piece, slopeOf } from "./piece.ts";

/**
 * The heights at which two pieces, drawn on past their ends, may have one depth: where a line meets a line or a circle, or two
 * circles meet. A circle's other half counts too, so each is to be looked at by who asks.
 */
export function crossingsMm(one: Piece, other: Piece): number[] {
  if (one.kind === "line") return other.kind === "line" ? ofLines(one, other) : ofLineAndArc(one, other);
  return other.kind === "line" ? ofLineAndArc(other, one) : ofArcs(one, other);
}

function ofLines(one: LinePiece, other: LinePiece): number[] {
  const slope = slopeOf(one) - slopeOf(other);
  if (slope === 0) return [];
  const apartMm = one.startDepthMm + slopeOf(one) * (other.fromMm - one.fromMm) - other.startDepthMm;
  return [other.fromMm - apartMm / slope];
}

function ofLineAndArc(line: LinePiece, { centreMm, centreDepthMm, arcRadiusMm }: ArcPiece): number[] {
  const slope = slopeOf(line);
  const overCentreMm = line.startDepthMm + slope * (centreMm - line.fromMm) - centreDepthMm;
  return ofSquare(1 + slope * slope, slope * overCentreMm, overCentreMm ** 2 - arcRadiusMm ** 2).map(
    (u) => centreMm + u,
  );
}

function ofArcs(one: ArcPiece, other: ArcPiece): number[] {
  const alongMm = other.centreMm - one.centreMm;
  const acrossMm = other.centreDepthMm - one.centreDepthMm;
  const apart2 = alongMm * alongMm + acrossMm * acrossMm;
  if (apart2 === 0) return [];
  // The common chord lies square to the line of the centres, so far along it.
  const share = (apart2 + one.arcRadiusMm ** 2 - other.arcRadiusMm ** 2) / (2 * apart2);
  const half2 = one.arcRadiusMm ** 2 / apart2 - share * share;
  if (half2 < 0) return [];
  const half = Math.sqrt(half2);
  const footMm = one.centreMm + share * alongMm;
  return [footMm - half * acrossMm, footMm + half * acrossMm];
}

/** The roots of a·u² + 2·b·u + c. */
function ofSquare(a: number, b: number, c: number): number[] {
  const quarter = b * b - a * c;
  if (quarter < 0) return [];
  const root = Math.sqrt(quarter);
  return [(-b - root) / a, (-b + root) / a];
}
