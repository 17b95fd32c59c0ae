import { type BitView, reachedPieces } from "./bit-view.ts";
import { envelope, SAME_HEIGHT_MM } from "./curve.ts";
import { distanceToWoodMm } from "./distance.ts";
import type { Fit } from "./fit.ts";
import { type Curve, depthAtMm, linePiece, type Piece } from "./piece.ts";

/** The wood that is left to remove farthest from the wanted wall: how far, and where. */
export type Left = { readonly mm: number; readonly heightMm: number; readonly depthMm: number };

/** Where a piece of the cut lies in front of a piece of the wall. */
type Overlap = { readonly piece: Piece; readonly cut: Piece; readonly fromMm: number; readonly toMm: number };

/**
 * Shares of an overlap at which it is looked at: even ones, and closer and closer to its ends, where what is left may be
 * farthest from two pieces of a corner at once.
 */
const SHARES: readonly number[] = [
  ...Array.from({ length: 10 }, (_, index) => 2 ** (index - 12)),
  ...[0.25, 0.375, 0.5, 0.625, 0.75],
  ...Array.from({ length: 10 }, (_, index) => 1 - 2 ** (-3 - index)),
  0,
  1,
].sort((one, other) => one - other);

/** How often the farthest of neighbouring places is closed in on. */
const CLOSING_IN = 16;

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

/**
 * The greatest distance from the wood that stays to what is left in front of it; or the first that is found of `enoughMm`, if
 * there is one.
 */
export function greatestLeft(wall: Curve, removed: Curve, enoughMm = Infinity): Left {
  let left: Left = { mm: 0, heightMm: 0, depthMm: 0 };
  for (const cut of removed) {
    for (const piece of wall) {
      const fromMm = Math.max(cut.fromMm, piece.fromMm);
      const toMm = Math.min(cut.toMm, piece.toMm);
      if (toMm - fromMm <= SAME_HEIGHT_MM) continue;
      left = farthestOn(wall, { piece, cut, fromMm, toMm }, left, enoughMm);
      if (left.mm >= enoughMm) return left;
    }
  }
  return left;
}

function farther(one: Left, other: Left): Left {
  return other.mm > one.mm ? other : one;
}

/**
 * The farthest of one overlap, if it is farther than another one: every place that is farther than its neighbours is closed in
 * on.
 */
function farthestOn(wall: Curve, overlap: Overlap, other: Left, enoughMm: number): Left {
  const { cut, fromMm, toMm } = overlap;
  const places: Left[] = [];
  for (const share of SHARES) {
    const place = leftAt(wall, overlap, fromMm + share * (toMm - fromMm));
    if (place.mm >= enoughMm) return place;
    places.push(place);
  }
  let best = other;
  for (const [index, place] of places.entries()) {
    const before = places[index - 1] ?? place;
    const after = places[index + 1] ?? place;
    if (place.mm <= ROUNDING_MM || place.mm < before.mm || place.mm < after.mm) continue;
    // Nowhere between neighbours is it farther than the way there adds.
    const wayMm = Math.max(wayOnMm(cut, before, place), wayOnMm(cut, place, after));
    if (place.mm + wayMm <= best.mm) continue;
    best = farther(best, closedIn(wall, overlap, place, before.heightMm, after.heightMm));
  }
  return best;
}

/** At most how long the way along a cut is between two places. */
function wayOnMm(cut: Piece, one: Left, other: Left): number {
  const directMm = Math.hypot(other.heightMm - one.heightMm, other.depthMm - one.depthMm);
  return cut.kind === "line" ? directMm : (Math.PI / 2) * directMm;
}

function closedIn(wall: Curve, overlap: Overlap, start: Left, fromMm: number, toMm: number): Left {
  let best = start;
  let widthMm = (toMm - fromMm) / 4;
  for (let round = 0; round < CLOSING_IN; round += 1, widthMm /= 2) {
    best = farther(best, leftAt(wall, overlap, Math.max(fromMm, best.heightMm - widthMm)));
    best = farther(best, leftAt(wall, overlap, Math.min(toMm, best.heightMm + widthMm)));
  }
  return best;
}

function leftAt(wall: Curve, { piece, cut }: Overlap, heightMm: number): Left {
  const depthMm = depthAtMm(cut, heightMm);
  const shortMm = depthAtMm(piece, heightMm) - depthMm;
  const mm = shortMm <= ROUNDING_MM ? 0 : distanceToWoodMm(wall, heightMm, depthMm, shortMm);
  return { mm, heightMm, depthMm };
}
