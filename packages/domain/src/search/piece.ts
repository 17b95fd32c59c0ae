/** A depth in mm as a function of a height in mm, straight or on a circle. */
export type Piece = LinePiece | ArcPiece;

/** Runs straight from (fromMm, startDepthMm) to (toMm, endDepthMm). */
export type LinePiece = {
  readonly kind: "line";
  readonly fromMm: number;
  readonly toMm: number;
  readonly startDepthMm: number;
  readonly endDepthMm: number;
};

/** centreDepthMm + side·√(arcRadiusMm² − (z − centreMm)²). */
export type ArcPiece = {
  readonly kind: "arc";
  readonly fromMm: number;
  readonly toMm: number;
  readonly centreMm: number;
  readonly centreDepthMm: number;
  readonly arcRadiusMm: number;
  readonly side: 1 | -1;
};

/** Pieces in order of rising height. Between two of them there may be a step or a gap. */
export type Curve = readonly Piece[];

/** A straight piece; level unless an end is given. */
export function linePiece(
  fromMm: number,
  toMm: number,
  startDepthMm: number,
  endDepthMm = startDepthMm,
): LinePiece {
  return { kind: "line", fromMm, toMm, startDepthMm, endDepthMm };
}

/** The depth in mm of a piece at a height on it. */
export function depthAtMm(piece: Piece, zMm: number): number {
  if (piece.kind === "line") {
    const run = piece.toMm - piece.fromMm;
    if (run === 0) return piece.startDepthMm;
    return piece.startDepthMm + ((piece.endDepthMm - piece.startDepthMm) * (zMm - piece.fromMm)) / run;
  }
  const u = zMm - piece.centreMm;
  const chord2 = piece.arcRadiusMm * piece.arcRadiusMm - u * u;
  return piece.centreDepthMm + (chord2 > 0 ? piece.side * Math.sqrt(chord2) : 0);
}

/** The least depth of a piece between two heights on it. */
export function leastDepthMm(piece: Piece, fromMm: number, toMm: number): number {
  if (turnsWithin(piece, -1, fromMm, toMm)) return piece.centreDepthMm - piece.arcRadiusMm;
  return Math.min(depthAtMm(piece, fromMm), depthAtMm(piece, toMm));
}

/** The greatest depth of a piece between two heights on it. */
export function greatestDepthMm(piece: Piece, fromMm: number, toMm: number): number {
  if (turnsWithin(piece, 1, fromMm, toMm)) return piece.centreDepthMm + piece.arcRadiusMm;
  return Math.max(depthAtMm(piece, fromMm), depthAtMm(piece, toMm));
}

/** Rise of depth over height on a straight piece. */
export function slopeOf({ fromMm, toMm, startDepthMm, endDepthMm }: LinePiece): number {
  return (endDepthMm - startDepthMm) / (toMm - fromMm);
}

/** The same piece farther up by `byMm`. */
export function raised(piece: Piece, byMm: number): Piece {
  const ends = { fromMm: piece.fromMm + byMm, toMm: piece.toMm + byMm };
  return piece.kind === "line"
    ? { ...piece, ...ends }
    : { ...piece, ...ends, centreMm: piece.centreMm + byMm };
}

/** The same piece with up and down exchanged about height 0. */
export function upsideDown(piece: Piece): Piece {
  const ends = { fromMm: -piece.toMm, toMm: -piece.fromMm };
  return piece.kind === "line"
    ? { ...piece, ...ends, startDepthMm: piece.endDepthMm, endDepthMm: piece.startDepthMm }
    : { ...piece, ...ends, centreMm: -piece.centreMm };
}

/** The part of a piece between two heights on it. */
export function partOf(piece: Piece, fromMm: number, toMm: number): Piece {
  if (piece.kind === "arc") return { ...piece, fromMm, toMm };
  return linePiece(fromMm, toMm, depthAtMm(piece, fromMm), depthAtMm(piece, toMm));
}

/**
 * The height at which two pieces, the first raised by `byMm`, run in the same direction: where their difference may be greatest
 * between their ends. On a circle the direction is that of the normal, so that two circles are parallel at equal or opposite
 * angles.
 */
export function parallelAtMm(raisedPiece: Piece, byMm: number, other: Piece): number | undefined {
  if (raisedPiece.kind === "line") {
    return other.kind === "line" ? undefined : slopeOnArcMm(other, slopeOf(raisedPiece));
  }
  if (other.kind === "line") return byMm + slopeOnArcMm(raisedPiece, slopeOf(other));
  const centreMm = raisedPiece.centreMm + byMm;
  const [one, two] = [raisedPiece.arcRadiusMm, other.arcRadiusMm];
  if (raisedPiece.side !== other.side) return (centreMm * two + other.centreMm * one) / (one + two);
  return one === two ? undefined : (centreMm * two - other.centreMm * one) / (two - one);
}

/** Height at which an arc rises by `slope` in depth for each mm of height. */
function slopeOnArcMm({ centreMm, arcRadiusMm, side }: ArcPiece, slope: number): number {
  return centreMm - (side * slope * arcRadiusMm) / Math.sqrt(1 + slope * slope);
}

function turnsWithin(piece: Piece, side: 1 | -1, fromMm: number, toMm: number): piece is ArcPiece {
  return piece.kind === "arc" && piece.side === side && piece.centreMm > fromMm && piece.centreMm < toMm;
}
