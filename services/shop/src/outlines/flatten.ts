import { GIVEN_OUTLINE_RANGES } from "@rimwise/domain";
import type { Corner } from "./stroke.ts";

/** More lines than an outline takes are not worth finding: a wild path would ask for millions. */
const MOST_STEPS = GIVEN_OUTLINE_RANGES.segments.max + 1;

/**
 * Ends of equal steps along a Bézier curve whose chords stay within `toleranceMm` of it. For degree d and the greatest second
 * difference M of its corners, √(d·(d − 1)·M / (8·tolerance)) steps are enough (Wang's formula; from memory). A curve that
 * needs more than an outline takes gets just that many.
 */
export function flattened(
  from: Corner,
  controls: readonly Corner[],
  to: Corner,
  toleranceMm: number,
): Corner[] {
  const corners = [from, ...controls, to];
  const degree = corners.length - 1;
  const bend = greatestSecondDifferenceMm(corners);
  const needed = Math.ceil(Math.sqrt((degree * (degree - 1) * bend) / (8 * toleranceMm)));
  const steps = Math.max(1, Math.min(needed, MOST_STEPS));
  return Array.from({ length: steps }, (_, index) =>
    index === steps - 1 ? to : pointAt(corners, (index + 1) / steps),
  );
}

function greatestSecondDifferenceMm(corners: readonly Corner[]): number {
  return Math.max(
    ...corners.slice(2).map((corner, index) => {
      const [first = corner, second = corner] = corners.slice(index);
      return Math.hypot(first.xMm - 2 * second.xMm + corner.xMm, first.yMm - 2 * second.yMm + corner.yMm);
    }),
  );
}

/** De Casteljau: halfway points of halfway points, at any share. */
function pointAt(corners: readonly Corner[], share: number): Corner {
  const [first = { xMm: 0, yMm: 0 }, ...rest] = corners;
  if (rest.length === 0) return first;
  const between = rest.map((corner, index) => {
    const before = corners[index] ?? corner;
    return {
      xMm: before.xMm + share * (corner.xMm - before.xMm),
      yMm: before.yMm + share * (corner.yMm - before.yMm),
    };
  });
  return pointAt(between, share);
}
