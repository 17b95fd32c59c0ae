import type { Curve } from "./piece.ts";

/** Raises nearer to each other than this are one, mm. */
const SAME_RAISE_MM = 1e-9;

/** Heights of a curve that another may be laid on: ends of pieces and centres of arcs, each once. */
export function marksMm(curve: Curve): number[] {
  const marks = curve.flatMap((piece) => [
    piece.fromMm,
    piece.toMm,
    ...(piece.kind === "arc" ? [piece.centreMm] : []),
  ]);
  return distinct(marks);
}

/** Raises between two at which a mark of the bit lies on one of the wall, rising. */
export function alignmentsMm(
  wallMarks: readonly number[],
  bitMarks: readonly number[],
  fromMm: number,
  toMm: number,
): number[] {
  const raises: number[] = [];
  for (const wallMm of wallMarks) {
    for (const bitMm of bitMarks) {
      const raiseMm = wallMm - bitMm;
      if (raiseMm >= fromMm - SAME_RAISE_MM && raiseMm <= toMm + SAME_RAISE_MM) raises.push(raiseMm);
    }
  }
  return distinct(raises);
}

function distinct(values: readonly number[]): number[] {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted.filter((value, index) => index === 0 || value - (sorted[index - 1] ?? 0) > SAME_RAISE_MM);
}
