import type { ProfilePoint } from "../../bit/profile.ts";
import { crossingsMm } from "../crossings.ts";
import { greatestDifference } from "../curve.ts";
import { removedBy } from "../left.ts";
import { type Curve, depthAtMm, linePiece, type Piece } from "../piece.ts";
import { greatestBetween, leastBetween } from "../range.ts";
import type { Target } from "../target.ts";
import type { Cut } from "./candidate.ts";
import { seenIn } from "./witness.ts";

/** Cuts of one bit with the work flat, and of others with it standing: what each kind has removed, as it is seen so. */
type Removed = {
  readonly flat: Curve;
  readonly standing: Curve;
  readonly from: Target;
  readonly thicknessMm: number;
};

/**
 * Places flat cuts do not reach are looked at in cells no higher than this, mm: between them a corner may hide from no
 * tolerance that is wider.
 */
const CELL_MM = 0.02;

/** Heights nearer to the ends of a cell than this are at them, and what is short by less is rounding, mm. */
const INSIDE_MM = 1e-6;
const ROUNDING_MM = 1e-9;

/** A cell of what must go that neither flat nor standing cuts are sure to have removed. */
type Cell = { readonly fromMm: number; readonly toMm: number };

/** What cuts of both kinds have removed. */
export function removedByBoth(
  flat: Target,
  standing: Target,
  cuts: readonly Cut[],
  thicknessMm: number,
): Removed {
  const of = (target: Target) =>
    removedBy(
      cuts.filter((cut) => cut.target === target),
      target.topMm,
    );
  return { flat: of(flat), standing: of(standing), from: standing, thicknessMm };
}

/**
 * The lowest cell of what must go that is not sure to be gone: flat cuts do not reach its end everywhere, and standing ones not
 * beyond all of it. Cells are taken on the cautious side: what is said to be gone is.
 */
export function cellLeft({ need }: Target, removed: Removed): Cell | undefined {
  for (const piece of need) {
    const rest = stretchesShort(piece, removed.flat);
    const cell = rest.flatMap(cellsOf).find((each) => !isGone([piece], removed, each));
    if (cell !== undefined) return cell;
  }
  return undefined;
}

/** A place in a cell that is surely left, if one is found on a few of its rows. */
export function placeLeft(need: Curve, removed: Removed, { fromMm, toMm }: Cell): ProfilePoint[] {
  const rows = [0.5, 0.01, 0.99].map((share) => fromMm + share * (toMm - fromMm));
  return rows.flatMap((zMm) => {
    const xMm = firstLeftMm(removed, zMm);
    return need.some((piece) => isOn(piece, zMm) && xMm < depthAtMm(piece, zMm) - INSIDE_MM)
      ? [{ xMm: xMm + INSIDE_MM / 2, zMm }]
      : [];
  });
}

/**
 * What is removed without a break from the edge in, at each height of flat work: what is left is farthest from the wall there.
 * Rows between cells are straight.
 */
export function removedFromEdge(flat: Target, removed: Removed): Curve {
  const bounds = [...flat.limit, ...removed.flat].flatMap(({ fromMm, toMm }) => [fromMm, toMm]);
  const sorted = [...new Set(bounds)].sort((one, other) => one - other);
  return sorted.slice(1).flatMap((toMm, index) => {
    const fromMm = sorted[index] ?? toMm;
    if (toMm - fromMm <= 2 * INSIDE_MM) return [];
    return cellsOf({ fromMm, toMm }).map((cell) =>
      linePiece(
        cell.fromMm,
        cell.toMm,
        firstLeftMm(removed, cell.fromMm + INSIDE_MM),
        firstLeftMm(removed, cell.toMm - INSIDE_MM),
      ),
    );
  });
}

/** The parts of a piece at which flat cuts do not reach it. */
function stretchesShort(piece: Piece, flat: Curve): Cell[] {
  return flat.flatMap((cut) => {
    const fromMm = Math.max(cut.fromMm, piece.fromMm);
    const toMm = Math.min(cut.toMm, piece.toMm);
    if (toMm - fromMm <= INSIDE_MM) return [];
    const isReached = greatestDifference([piece], 0, [cut], fromMm, toMm).mm <= ROUNDING_MM;
    return isReached ? [] : [{ fromMm, toMm }];
  });
}

function cellsOf({ fromMm, toMm }: Cell): Cell[] {
  const count = Math.ceil((toMm - fromMm) / CELL_MM);
  const stepMm = (toMm - fromMm) / count;
  return Array.from({ length: count }, (_, index) => ({
    fromMm: fromMm + index * stepMm,
    toMm: fromMm + (index + 1) * stepMm,
  }));
}

function isGone(
  need: Curve,
  { flat, standing, from, thicknessMm }: Removed,
  { fromMm, toMm }: Cell,
): boolean {
  if (greatestDifference(need, 0, flat, fromMm, toMm).mm <= ROUNDING_MM) return true;
  const reachedMm = leastBetween(flat, fromMm, toMm);
  const neededMm = greatestBetween(need, fromMm, toMm);
  const ends = [fromMm, toMm].map((zMm) => seenIn(from.wall, { xMm: 0, zMm }, thicknessMm).depthMm);
  return leastBetween(standing, Math.max(0, reachedMm), neededMm) >= Math.max(...ends) - ROUNDING_MM;
}

/** The first place from the edge in, at a height of flat work, that neither kind of cut has removed. */
function firstLeftMm({ flat, standing, from, thicknessMm }: Removed, zMm: number): number {
  const reachedMm = Math.max(
    0,
    ...flat.filter((piece) => isOn(piece, zMm)).map((piece) => depthAtMm(piece, zMm)),
  );
  const { depthMm } = seenIn(from.wall, { xMm: 0, zMm }, thicknessMm);
  for (const piece of standing) {
    if (piece.toMm <= reachedMm) continue;
    const level = linePiece(piece.fromMm, piece.toMm, depthMm);
    const startMm = Math.max(piece.fromMm, reachedMm);
    const places = [startMm, ...crossingsMm(piece, level), piece.toMm].filter(
      (xMm) => xMm >= startMm && xMm <= piece.toMm,
    );
    places.sort((one, other) => one - other);
    const left = places.find((xMm, index) => {
      const next = places[index + 1];
      return next !== undefined && depthAtMm(piece, (xMm + next) / 2) < depthMm;
    });
    if (left !== undefined) return left;
  }
  return reachedMm;
}

function isOn({ fromMm, toMm }: Piece, zMm: number): boolean {
  return zMm >= fromMm && zMm <= toMm;
}
