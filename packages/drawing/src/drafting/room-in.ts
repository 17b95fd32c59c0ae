import type { Contour, Point } from "../scene/contour.ts";

type Stretch = readonly [fromMm: number, toMm: number];

/**
 * The middle of a place inside these contours, which are straight from corner to corner, that holds a box so wide and so high: of those found
 * the one with most room beside it. Rows half a box apart are looked at. Undefined if there is none.
 */
export function roomIn(contours: readonly Contour[], widthMm: number, heightMm: number): Point | undefined {
  const sides = sidesOf(contours);
  let [highest, lowest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { from } of sides) {
    highest = Math.min(highest, from.yMm);
    lowest = Math.max(lowest, from.yMm);
  }
  if (lowest - highest < heightMm) return undefined;
  const stepMm = heightMm / 2;
  let best: Point | undefined;
  let bestMm = widthMm;
  let above = wideStretches(sides, highest + MARGIN_MM, widthMm);
  let middle = wideStretches(sides, highest + stepMm, widthMm);
  for (let yMm = highest + stepMm; yMm + stepMm <= lowest; yMm += stepMm) {
    const below = wideStretches(sides, Math.min(yMm + stepMm, lowest - MARGIN_MM), widthMm);
    for (const [fromMm, toMm] of shared(shared(above, middle), below)) {
      if (toMm - fromMm < bestMm) continue;
      bestMm = toMm - fromMm;
      best = { xMm: (fromMm + toMm) / 2, yMm };
    }
    [above, middle] = [middle, below];
  }
  return best;
}

/** A row along a level side of the contours would be neither inside nor outside, mm. */
const MARGIN_MM = 0.01;

type Side = { readonly from: Point; readonly to: Point };

function sidesOf(contours: readonly Contour[]): Side[] {
  const sides: Side[] = [];
  for (const { start, pieces } of contours) {
    let from = pieces.at(-1)?.to ?? start;
    sides.push({ from, to: start });
    from = start;
    for (const { to } of pieces) {
      sides.push({ from, to });
      from = to;
    }
  }
  return sides;
}

/** The stretches of a row that an odd number of contours surrounds, those that are wide enough. */
function wideStretches(sides: readonly Side[], yMm: number, widthMm: number): Stretch[] {
  const places: number[] = [];
  for (const { from, to } of sides) {
    if (from.yMm <= yMm === to.yMm <= yMm) continue;
    places.push(from.xMm + ((to.xMm - from.xMm) * (yMm - from.yMm)) / (to.yMm - from.yMm));
  }
  places.sort((one, other) => one - other);
  const stretches: Stretch[] = [];
  for (let index = 0; index + 1 < places.length; index += 2) {
    const [fromMm = 0, toMm = 0] = [places[index], places[index + 1]];
    if (toMm - fromMm >= widthMm) stretches.push([fromMm, toMm]);
  }
  return stretches;
}

function shared(one: readonly Stretch[], other: readonly Stretch[]): Stretch[] {
  const both: Stretch[] = [];
  for (const [fromMm, toMm] of one) {
    for (const [from, to] of other) {
      if (Math.min(toMm, to) > Math.max(fromMm, from))
        both.push([Math.max(fromMm, from), Math.min(toMm, to)]);
    }
  }
  return both;
}
