import { type BitView, reachedPieces } from "./bit-view.ts";
import { envelope, SAME_HEIGHT_MM } from "./curve.ts";
import type { Fit } from "./fit.ts";
import { type Curve, depthAtMm, linePiece, type Piece, parallelAtMm } from "./piece.ts";

/** The wood that is left to remove farthest from the wanted wall: how far, and where. */
export type Left = { readonly mm: number; readonly heightMm: number; readonly depthMm: number };

/** Places looked at along each piece before the farthest is closed in on, and how often it is. */
const PLACES = 8;
const CLOSING_IN = 24;

/** What is left by less depth is rounding, mm. */
const ROUNDING_MM = 1e-9;

/** What one or more cuts have removed at each height of work so high. */
export function removedBy(
  cuts: readonly { readonly view: BitView; readonly fit: Fit }[],
  topMm: number,
): Curve {
  const reached = cuts.flatMap(({ view, fit }) => reachedPieces(view, fit.raiseMm, fit.fenceMm));
  return envelope("greatest", [linePiece(0, topMm, 0), ...reached], 0, topMm);
}

/** The greatest distance from the wood that stays to what is left in front of it. */
export function greatestLeft(wall: Curve, removed: Curve): Left {
  let left: Left = { mm: 0, heightMm: 0, depthMm: 0 };
  for (const cut of removed) {
    for (const piece of wall) {
      const fromMm = Math.max(cut.fromMm, piece.fromMm);
      const toMm = Math.min(cut.toMm, piece.toMm);
      if (toMm - fromMm > SAME_HEIGHT_MM) left = farther(left, farthestOn(wall, piece, cut, fromMm, toMm));
    }
  }
  return left;
}

function farther(one: Left, other: Left): Left {
  return other.mm > one.mm ? other : one;
}

function farthestOn(wall: Curve, piece: Piece, cut: Piece, fromMm: number, toMm: number): Left {
  const at = (heightMm: number): Left => {
    const depthMm = depthAtMm(cut, heightMm);
    const shortMm = depthAtMm(piece, heightMm) - depthMm;
    const mm = shortMm <= ROUNDING_MM ? 0 : distanceToWoodMm(wall, heightMm, depthMm, shortMm);
    return { mm, heightMm, depthMm };
  };
  const parallelMm = parallelAtMm(cut, 0, piece);
  const stepMm = (toMm - fromMm) / PLACES;
  let best = at(toMm);
  for (let place = 0; place < PLACES; place += 1) best = farther(best, at(fromMm + place * stepMm));
  if (parallelMm !== undefined && parallelMm > fromMm && parallelMm < toMm)
    best = farther(best, at(parallelMm));
  if (best.mm <= ROUNDING_MM) return best;
  for (let widthMm = stepMm / 2, round = 0; round < CLOSING_IN; round += 1, widthMm /= 2) {
    best = farther(best, at(Math.max(fromMm, best.heightMm - widthMm)));
    best = farther(best, at(Math.min(toMm, best.heightMm + widthMm)));
  }
  return best;
}

/** Distance in mm from a place in the waste to the wood behind it, which is at most `shortMm` away. */
function distanceToWoodMm(wall: Curve, heightMm: number, depthMm: number, shortMm: number): number {
  let nearestMm = shortMm;
  let before: number | undefined;
  for (const piece of wall) {
    const startMm = depthAtMm(piece, piece.fromMm);
    if (before !== undefined && Math.abs(piece.fromMm - heightMm) < nearestMm) {
      // The step between two pieces is wood from the lesser depth on.
      const acrossMm = Math.max(0, Math.min(before, startMm) - depthMm);
      nearestMm = Math.min(nearestMm, Math.hypot(acrossMm, piece.fromMm - heightMm));
    }
    before = depthAtMm(piece, piece.toMm);
    if (piece.toMm < heightMm - nearestMm || piece.fromMm > heightMm + nearestMm) continue;
    nearestMm = Math.min(nearestMm, distanceToPieceMm(piece, heightMm, depthMm));
  }
  return nearestMm;
}

function distanceToPieceMm(piece: Piece, heightMm: number, depthMm: number): number {
  const toHeight = (zMm: number) => {
    const onMm = Math.min(piece.toMm, Math.max(piece.fromMm, zMm));
    return Math.hypot(onMm - heightMm, depthAtMm(piece, onMm) - depthMm);
  };
  const endsMm = Math.min(toHeight(piece.fromMm), toHeight(piece.toMm));
  if (piece.kind === "line") {
    const runMm = piece.toMm - piece.fromMm;
    const riseMm = piece.endDepthMm - piece.startDepthMm;
    const along =
      ((heightMm - piece.fromMm) * runMm + (depthMm - piece.startDepthMm) * riseMm) /
      (runMm ** 2 + riseMm ** 2);
    return Math.min(endsMm, toHeight(piece.fromMm + along * runMm));
  }
  const outMm = piece.side * (depthMm - piece.centreDepthMm);
  const upMm = heightMm - piece.centreMm;
  const fromCentreMm = Math.hypot(outMm, upMm);
  // On the other side of the centre the nearest of the circle is not on this half of it.
  if (outMm <= 0 || fromCentreMm === 0) return endsMm;
  return Math.min(endsMm, toHeight(piece.centreMm + (upMm / fromCentreMm) * piece.arcRadiusMm));
}
