import { envelope, positiveParts } from "./curve.ts";
import {
  type ArcPiece,
  type Curve,
  depthAtMm,
  type LinePiece,
  type Piece,
  partOf,
  slopeOf,
} from "./piece.ts";

/**
 * What must be gone so that nothing is left farther than `toleranceMm` from the wood that stays: the wanted depth eroded by a
 * disc of that radius, min over |ζ − z| ≤ tolerance of w(ζ) − √(tolerance² − (ζ − z)²). Its boundary is made of the pieces
 * moved off the wood, and of circles about their corners. Only the heights at which it is deeper than 0.
 */
export function eroded(wall: Curve, toleranceMm: number): Curve {
  const fromMm = wall[0]?.fromMm ?? 0;
  const toMm = wall.at(-1)?.toMm ?? 0;
  const moved = wall.flatMap((piece) => [
    ...(piece.kind === "line" ? [lineOff(piece, toleranceMm)] : arcOff(piece, toleranceMm)),
    cornerOff(piece, piece.fromMm, toleranceMm),
    cornerOff(piece, piece.toMm, toleranceMm),
  ]);
  return positiveParts(envelope("least", moved, fromMm, toMm));
}

function lineOff(line: LinePiece, byMm: number): Piece {
  const slope = slopeOf(line);
  const steepness = Math.sqrt(1 + slope * slope);
  const upMm = (byMm * slope) / steepness;
  const backMm = byMm / steepness;
  return {
    ...line,
    fromMm: line.fromMm + upMm,
    toMm: line.toMm + upMm,
    startDepthMm: line.startDepthMm - backMm,
    endDepthMm: line.endDepthMm - backMm,
  };
}

/** A hollow loses what it is eroded by, a rounding gains it; of a hollow no wider than the disc only the corners are left. */
function arcOff(arc: ArcPiece, byMm: number): Piece[] {
  const arcRadiusMm = arc.arcRadiusMm - arc.side * byMm;
  if (arcRadiusMm <= 0) return [];
  const ratio = arcRadiusMm / arc.arcRadiusMm;
  const off = { ...arc, arcRadiusMm };
  return [
    partOf(
      off,
      arc.centreMm + (arc.fromMm - arc.centreMm) * ratio,
      arc.centreMm + (arc.toMm - arc.centreMm) * ratio,
    ),
  ];
}

function cornerOff(piece: Piece, zMm: number, byMm: number): Piece {
  return {
    kind: "arc",
    fromMm: zMm - byMm,
    toMm: zMm + byMm,
    centreMm: zMm,
    centreDepthMm: depthAtMm(piece, zMm),
    arcRadiusMm: byMm,
    side: -1,
  };
}
