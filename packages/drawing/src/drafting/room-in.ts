import type { Contour, Point } from "../scene/contour.ts";

/** Rows that are looked at are so far apart, mm. */
const STEP_MM = 0.7;

type Stretch = readonly [fromMm: number, toMm: number];

/**
 * The middle of a place inside these contours, which are straight from corner to corner, that holds a box so wide and so high: of those found
 * the one with most room beside it. Undefined if there is none.
 */
export function roomIn(contours: readonly Contour[], widthMm: number, heightMm: number): Point | undefined {
  const corners = contours.flatMap(({ start, pieces }) => [start, ...pieces.map(({ to }) => to)]);
  const highest = corners.reduce((least, { yMm }) => Math.min(least, yMm), Number.POSITIVE_INFINITY);
  const lowest = corners.reduce((most, { yMm }) => Math.max(most, yMm), Number.NEGATIVE_INFINITY);
  let best: Point | undefined;
  let bestMm = widthMm;
  for (let yMm = highest + heightMm / 2; yMm <= lowest - heightMm / 2; yMm += STEP_MM) {
    const rows = [-0.5, -0.25, 0, 0.25, 0.5].map((share) => inside(contours, yMm + share * heightMm));
    for (const [fromMm, toMm] of rows.reduce(shared)) {
      if (toMm - fromMm < bestMm) continue;
      bestMm = toMm - fromMm;
      best = { xMm: (fromMm + toMm) / 2, yMm };
    }
  }
  return best;
}

/** The stretches of a row that an odd number of contours surrounds. */
function inside(contours: readonly Contour[], yMm: number): Stretch[] {
  const places: number[] = [];
  for (const { start, pieces } of contours) {
    let from = pieces.at(-1)?.to ?? start;
    for (const to of [start, ...pieces.map((piece) => piece.to)]) {
      if (from.yMm <= yMm !== to.yMm <= yMm) {
        places.push(from.xMm + ((to.xMm - from.xMm) * (yMm - from.yMm)) / (to.yMm - from.yMm));
      }
      from = to;
    }
  }
  places.sort((one, other) => one - other);
  return places.flatMap((fromMm, index) => {
    const toMm = places[index + 1];
    return index % 2 === 0 && toMm !== undefined ? [[fromMm, toMm] as const] : [];
  });
}

function shared(one: readonly Stretch[], other: readonly Stretch[]): Stretch[] {
  return one.flatMap(([fromMm, toMm]) =>
    other
      .map(([from, to]) => [Math.max(fromMm, from), Math.min(toMm, to)] as const)
      .filter(([from, to]) => to > from),
  );
}
