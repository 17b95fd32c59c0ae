import { type ArcPiece, type Curve, depthAtMm, type LinePiece, type Piece } from "./piece.ts";

/** Distance in mm from a place in the waste to the wood behind the wall, which is straight in at most `shortMm` away. */
export function distanceToWoodMm(wall: Curve, heightMm: number, depthMm: number, shortMm: number): number {
  let nearestMm = shortMm;
  let before: number | undefined;
  for (const piece of wall) {
    if (piece.fromMm > heightMm + nearestMm) break;
    if (piece.toMm >= heightMm - nearestMm) {
      const startMm = depthAtMm(piece, piece.fromMm);
      if (before !== undefined) {
        // The step between two pieces is wood from the lesser depth on.
        const acrossMm = Math.max(0, Math.min(before, startMm) - depthMm);
        nearestMm = Math.min(nearestMm, apartMm(acrossMm, piece.fromMm - heightMm));
      }
      nearestMm = Math.min(nearestMm, distanceToPieceMm(piece, heightMm, depthMm));
    }
    before = depthAtMm(piece, piece.toMm);
  }
  return nearestMm;
}

function distanceToPieceMm(piece: Piece, heightMm: number, depthMm: number): number {
  const onMm =
    piece.kind === "line" ? footOnLine(piece, heightMm, depthMm) : footOnArc(piece, heightMm, depthMm);
  if (onMm > piece.fromMm && onMm < piece.toMm) return toHeightMm(piece, onMm, heightMm, depthMm);
  return Math.min(
    toHeightMm(piece, piece.fromMm, heightMm, depthMm),
    toHeightMm(piece, piece.toMm, heightMm, depthMm),
  );
}

/** Height of the foot of the perpendicular, on the line drawn on past its ends. */
function footOnLine(line: LinePiece, heightMm: number, depthMm: number): number {
  const runMm = line.toMm - line.fromMm;
  const riseMm = line.endDepthMm - line.startDepthMm;
  const alongMm = (heightMm - line.fromMm) * runMm + (depthMm - line.startDepthMm) * riseMm;
  return line.fromMm + (alongMm / (runMm * runMm + riseMm * riseMm)) * runMm;
}

/** Height of the nearest place of the circle; none if that is not on the arc's half of it, past the centre. */
function footOnArc(arc: ArcPiece, heightMm: number, depthMm: number): number {
  const outMm = arc.side * (depthMm - arc.centreDepthMm);
  const upMm = heightMm - arc.centreMm;
  const fromCentreMm = apartMm(outMm, upMm);
  return outMm <= 0 || fromCentreMm === 0
    ? Number.NaN
    : arc.centreMm + (upMm / fromCentreMm) * arc.arcRadiusMm;
}

function toHeightMm(piece: Piece, onMm: number, heightMm: number, depthMm: number): number {
  return apartMm(onMm - heightMm, depthAtMm(piece, onMm) - depthMm);
}

function apartMm(one: number, other: number): number {
  return Math.sqrt(one * one + other * other);
}
