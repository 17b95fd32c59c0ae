import { type Curve, greatestDepthMm, leastDepthMm } from "./piece.ts";

/** The least depth between two heights; −∞ if the curve leaves any of them out. */
export function leastBetween(curve: Curve, fromMm: number, toMm: number): number {
  let leastMm = Infinity;
  let reachedMm = fromMm;
  for (const piece of curve) {
    if (piece.toMm < fromMm) continue;
    if (piece.fromMm > toMm || piece.fromMm > reachedMm) break;
    const depthMm = leastDepthMm(piece, Math.max(fromMm, piece.fromMm), Math.min(toMm, piece.toMm));
    if (depthMm < leastMm) leastMm = depthMm;
    reachedMm = piece.toMm;
  }
  return reachedMm >= toMm ? leastMm : -Infinity;
}

/** The greatest depth between two heights; −∞ if the curve has none. */
export function greatestBetween(curve: Curve, fromMm: number, toMm: number): number {
  let greatestMm = -Infinity;
  for (const piece of curve) {
    if (piece.toMm < fromMm) continue;
    if (piece.fromMm > toMm) break;
    const depthMm = greatestDepthMm(piece, Math.max(fromMm, piece.fromMm), Math.min(toMm, piece.toMm));
    if (depthMm > greatestMm) greatestMm = depthMm;
  }
  return greatestMm;
}
