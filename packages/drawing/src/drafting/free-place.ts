import type { Point } from "../scene/contour.ts";
import type { TextItem } from "../scene/scene.ts";
import { type TextBox, textBox } from "../scene/text-box.ts";
import { MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "./page.ts";
import { textLine } from "./text.ts";

/** Room that something takes on the page, mm. */
export type Box = Omit<TextBox, "text">;

/** Where a number may stand beside a point, nearest first: to the right and down, mm, and which of its ends is there. */
const PLACES: readonly (readonly [number, number, TextItem["anchor"]])[] = [
  [1.3, -0.6, "start"],
  [-1.3, -0.6, "end"],
  [0, -1.6, "middle"],
  [1.3, 2.8, "start"],
  [-1.3, 2.8, "end"],
  [3.5, -3, "start"],
  [-3.5, -3, "end"],
  [3.5, 5, "start"],
  [-3.5, 5, "end"],
];

/** Two numbers nearer to each other than this read as one, mm. */
const APART_MM = 1.4;

/** A short text beside a point, at the first place where it overlaps nothing that is there and is no part of another number; undefined if there is none. */
export function freePlace(
  text: string,
  { xMm, yMm }: Point,
  taken: readonly Box[],
  numbers: readonly TextItem[],
): TextItem | undefined {
  const read = numbers.map((number) => widened(textBox(number)));
  for (const [rightMm, downMm, anchor] of PLACES) {
    const label = textLine(text, yMm + downMm, { xMm: xMm + rightMm, anchor, sizeMm: SMALL_MM });
    const box = textBox(label);
    const isOnPage = box.leftMm >= MARGIN_MM && box.rightMm <= PAGE_WIDTH_MM - MARGIN_MM;
    if (isOnPage && ![...taken, ...read].some((other) => doOverlap(box, other))) return label;
  }
  return undefined;
}

function doOverlap(one: Box, other: Box): boolean {
  return (
    one.leftMm < other.rightMm &&
    other.leftMm < one.rightMm &&
    one.topMm < other.bottomMm &&
    other.topMm < one.bottomMm
  );
}

function widened(box: Box): Box {
  return { ...box, leftMm: box.leftMm - APART_MM, rightMm: box.rightMm + APART_MM };
}
