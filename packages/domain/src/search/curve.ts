import { crossingsMm } from "./crossings.ts";
import { type Curve, depthAtMm, type Piece, parallelAtMm, partOf } from "./piece.ts";

/** Heights nearer to each other than this are one, mm: what two steps overlap by less is rounding. */
export const SAME_HEIGHT_MM = 1e-7;

/** A greatest difference, the height it is at, and the two depths there. */
export type Peak = {
  readonly mm: number;
  readonly atMm: number;
  readonly firstMm: number;
  readonly secondMm: number;
};

const NOWHERE: Peak = { mm: -Infinity, atMm: 0, firstMm: -Infinity, secondMm: 0 };

/**
 * The greatest by which the first curve, raised by `byMm`, is deeper than the second where both are: at the ends of their
 * pieces, or where these run in one direction. Of all heights, or of those between two. −∞ if they nowhere are.
 */
export function greatestDifference(
  first: Curve,
  byMm: number,
  second: Curve,
  leastMm = -Infinity,
  mostMm = Infinity,
): Peak {
  let peak = NOWHERE;
  let next = 0;
  for (const one of first) {
    const fromMm = one.fromMm + byMm;
    const toMm = one.toMm + byMm;
    for (let index = next; index < second.length; index += 1) {
      const other = second[index];
      if (other === undefined || other.fromMm >= toMm) break;
      if (other.toMm <= fromMm) {
        next = index + 1;
        continue;
      }
      const startMm = Math.max(fromMm, other.fromMm, leastMm);
      const endMm = Math.min(toMm, other.toMm, mostMm);
      if (endMm - startMm <= SAME_HEIGHT_MM) continue;
      peak = higher(peak, one, byMm, other, startMm);
      peak = higher(peak, one, byMm, other, endMm);
      if (one.kind === "line" && other.kind === "line") continue;
      const parallelMm = parallelAtMm(one, byMm, other);
      if (parallelMm !== undefined && parallelMm > startMm && parallelMm < endMm) {
        peak = higher(peak, one, byMm, other, parallelMm);
      }
    }
  }
  return peak;
}

function higher(peak: Peak, one: Piece, byMm: number, other: Piece, atMm: number): Peak {
  const firstMm = depthAtMm(one, atMm - byMm);
  const secondMm = depthAtMm(other, atMm);
  return firstMm - secondMm > peak.mm ? { mm: firstMm - secondMm, atMm, firstMm, secondMm } : peak;
}

/** Whether the second curve, raised by `byMm`, has a depth wherever the first has one. */
export function isSpanned(first: Curve, second: Curve, byMm: number): boolean {
  let next = 0;
  for (const one of first) {
    let reachedMm = one.fromMm;
    for (let index = next; index < second.length && reachedMm < one.toMm - SAME_HEIGHT_MM; index += 1) {
      const other = second[index];
      if (other === undefined || other.fromMm + byMm > reachedMm + SAME_HEIGHT_MM) return false;
      if (other.toMm + byMm <= reachedMm) next = index + 1;
      else reachedMm = other.toMm + byMm;
    }
    if (reachedMm < one.toMm - SAME_HEIGHT_MM) return false;
  }
  return true;
}

/**
 * The least, or the greatest, of many pieces at every height between two: pieces in rising order, with gaps where there is
 * none.
 */
export function envelope(
  which: "least" | "greatest",
  pieces: readonly Piece[],
  fromMm: number,
  toMm: number,
): Curve {
  const sign = which === "least" ? 1 : -1;
  const sorted = [...pieces].sort((one, other) => one.fromMm - other.fromMm);
  const bounds = boundsMm(sorted, fromMm, toMm);
  const curve: Piece[] = [];
  let source: Piece | undefined;
  let open = 0;
  bounds.slice(1).forEach((endMm, index) => {
    const startMm = bounds[index] ?? endMm;
    if (endMm - startMm <= SAME_HEIGHT_MM) return;
    const middleMm = (startMm + endMm) / 2;
    while (open < sorted.length && isAllBelow(sorted, open, startMm)) open += 1;
    const best = bestAt(sorted, open, middleMm, sign);
    const last = curve.at(-1);
    if (best === undefined) source = undefined;
    else if (best === source && last !== undefined && startMm - last.toMm <= SAME_HEIGHT_MM) {
      curve[curve.length - 1] = partOf(best, last.fromMm, endMm);
    } else curve.push(partOf(best, startMm, endMm));
    source = best;
  });
  return curve;
}

/** The parts of a curve that are deeper than 0. */
export function positiveParts(curve: Curve): Curve {
  return curve.flatMap((piece) => {
    const level: Piece = {
      kind: "line",
      fromMm: piece.fromMm,
      toMm: piece.toMm,
      startDepthMm: 0,
      endDepthMm: 0,
    };
    const bounds = [piece.fromMm, ...inside(crossingsMm(piece, level), piece.fromMm, piece.toMm), piece.toMm];
    return bounds.slice(1).flatMap((endMm, index) => {
      const startMm = bounds[index] ?? endMm;
      const isDeep = endMm - startMm > SAME_HEIGHT_MM && depthAtMm(piece, (startMm + endMm) / 2) > 0;
      return isDeep ? [partOf(piece, startMm, endMm)] : [];
    });
  });
}

/** Every height at which the least or greatest may change from one piece to another. */
function boundsMm(sorted: readonly Piece[], fromMm: number, toMm: number): number[] {
  const bounds = [fromMm, toMm];
  sorted.forEach((one, index) => {
    bounds.push(...inside([one.fromMm, one.toMm], fromMm, toMm));
    for (let at = index + 1; at < sorted.length; at += 1) {
      const other = sorted[at];
      if (other === undefined || other.fromMm >= one.toMm) break;
      const startMm = Math.max(fromMm, one.fromMm, other.fromMm);
      const endMm = Math.min(toMm, one.toMm, other.toMm);
      bounds.push(...inside(crossingsMm(one, other), startMm, endMm));
    }
  });
  return bounds.sort((a, b) => a - b);
}

function inside(heights: readonly number[], fromMm: number, toMm: number): number[] {
  return heights.filter((zMm) => zMm > fromMm && zMm < toMm).sort((a, b) => a - b);
}

/** Whether a piece ends below a height, and every one before it does. */
function isAllBelow(sorted: readonly Piece[], index: number, zMm: number): boolean {
  const piece = sorted[index];
  return piece !== undefined && piece.toMm <= zMm;
}

function bestAt(sorted: readonly Piece[], open: number, zMm: number, sign: 1 | -1): Piece | undefined {
  let best: Piece | undefined;
  let least = Infinity;
  for (let index = open; index < sorted.length; index += 1) {
    const piece = sorted[index];
    if (piece === undefined || piece.fromMm > zMm) break;
    if (piece.toMm < zMm) continue;
    const depthMm = sign * depthAtMm(piece, zMm);
    if (depthMm >= least) continue;
    least = depthMm;
    best = piece;
  }
  return best;
}
