import { cleared } from "../../drafting/cleared.ts";
import { SMALL_MM } from "../../drafting/page.ts";
import { roomIn } from "../../drafting/room-in.ts";
import { textLine } from "../../drafting/text.ts";
import { textWidthMm } from "../../font/metrics.ts";
import type { Contour, Point } from "../../scene/contour.ts";
import { circle, path, polyline } from "../../scene/path.ts";
import type { Item } from "../../scene/scene.ts";

/** A pass with its layer, and the strokes that hatch it. */
export type Layer = {
  readonly number: number;
  readonly contours: readonly Contour[];
  readonly strokes: readonly Contour[];
};

/** Uncut work beside the layers, on paper: there is room in it for the numbers of those too thin to hold theirs. */
export type Beside = {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly topMm: number;
  readonly bottomMm: number;
};

/** White around a number that stands in its hatching, mm. */
const CLEAR_MM = 0.3;
/** Digits reach so far above the line, in heights of the letter: the font's capital height. */
const DIGIT_EM = 0.73;
/** From one number beside the layers to the next, mm: what the font reaches up and down. */
const ROW_MM = SMALL_MM * 1.2;
/** Between two columns of them, and beside. */
const APART_MM = 1.2;
const DOT_MM = 0.35;

/** Each pass's number in its layer, or beside the layers with a line to it. Where there is no room either way the hatch alone says it. */
export function passNumbers(layers: readonly Layer[], beside: Beside): Item[] {
  const items: Item[] = [];
  const thin: { readonly number: number; readonly dot: Point }[] = [];
  for (const { number, contours, strokes } of layers) {
    const middle = roomFor(contours, number);
    if (middle !== undefined) items.push(...cleared(numberAt(number, middle)));
    else {
      const dot = middleOfLongest(strokes);
      if (dot !== undefined) thin.push({ number, dot });
    }
  }
  return [...items, ...led(thin, beside)];
}

function roomFor(contours: readonly Contour[], number: number): Point | undefined {
  const widthMm = textWidthMm(String(number), SMALL_MM, "bold") + 2 * CLEAR_MM;
  return roomIn(contours, widthMm, DIGIT_EM * SMALL_MM + 2 * CLEAR_MM);
}

function numberAt(number: number, { xMm, yMm }: Point) {
  const style = { xMm, anchor: "middle", sizeMm: SMALL_MM, weight: "bold" } as const;
  return textLine(String(number), yMm + (DIGIT_EM * SMALL_MM) / 2, style);
}

/**
 * Numbers in the order of the places that they stand for, so that no two lines cross: in two columns if the work is wide enough, those of
 * one between those of the other, so that every line finds its way.
 */
function led(thin: readonly { readonly number: number; readonly dot: Point }[], beside: Beside): Item[] {
  const { leftMm, rightMm, topMm, bottomMm } = beside;
  const widestMm = Math.max(0, ...thin.map(({ number }) => textWidthMm(String(number), SMALL_MM, "bold")));
  const columnMm = widestMm + APART_MM;
  const columns = Math.min(2, Math.floor((rightMm - leftMm - APART_MM) / columnMm));
  const pitchMm = ROW_MM / columns;
  const spanMm = (thin.length - 1) * pitchMm;
  if (columns < 1 || bottomMm - topMm < spanMm + ROW_MM) return [];
  const byHeight = [...thin].sort((one, other) => one.dot.yMm - other.dot.yMm);
  const middleMm = byHeight.reduce((sum, { dot }) => sum + dot.yMm, 0) / Math.max(1, byHeight.length);
  const highestMm = topMm + ROW_MM / 2;
  const firstMm = Math.min(Math.max(middleMm - spanMm / 2, highestMm), bottomMm - ROW_MM / 2 - spanMm);
  const farMm = rightMm - APART_MM - widestMm / 2;
  return byHeight.flatMap(({ number, dot }, index) => {
    const at = { xMm: farMm - (index % columns) * columnMm, yMm: firstMm + index * pitchMm };
    return [
      path({ of: "leader", number }, polyline([dot, at]), "thin"),
      path({ of: "leader-dot", number }, circle(dot, DOT_MM), "none", "ink"),
      ...cleared(numberAt(number, at)),
    ];
  });
}

/** A place that is surely inside: the middle of the longest stroke of its hatching. */
function middleOfLongest(strokes: readonly Contour[]): Point | undefined {
  let longestMm = 0;
  let middle: Point | undefined;
  for (const { start, pieces } of strokes) {
    const to = pieces[0]?.to ?? start;
    const lengthMm = Math.hypot(to.xMm - start.xMm, to.yMm - start.yMm);
    if (lengthMm <= longestMm) continue;
    longestMm = lengthMm;
    middle = { xMm: (start.xMm + to.xMm) / 2, yMm: (start.yMm + to.yMm) / 2 };
  }
  return middle;
}
