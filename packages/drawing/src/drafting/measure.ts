import { textWidthMm } from "../font/metrics.ts";
import type { Point } from "../scene/contour.ts";
import type { MeasureItem } from "../scene/scene.ts";
import { MARGIN_MM, PAGE_WIDTH_MM, TEXT_MM } from "./page.ts";
import { textLine } from "./text.ts";

/** What is measured between two places on paper, and how it is said. */
export type Measured = {
  readonly name: string;
  readonly valueMm: number;
  readonly text: string;
  readonly from: Point;
  readonly to: Point;
};

/** From the dimension line to its text, mm, and the room that a dimension across takes with its text. */
const BESIDE_MM = 1.1;
export const MEASURE_ROW_MM = 6.4;

/** A dimension across: its text stands on its line, in the middle of it, moved aside where it would leave the page. */
export function measureAcross({ name, valueMm, text, from, to }: Measured, lineAtMm: number): MeasureItem {
  const halfMm = textWidthMm(text, TEXT_MM, "normal") / 2;
  const leastMm = MARGIN_MM + halfMm;
  const middleMm = Math.max(leastMm, Math.min(PAGE_WIDTH_MM - leastMm, (from.xMm + to.xMm) / 2));
  const label = textLine(text, lineAtMm - BESIDE_MM, { xMm: middleMm, anchor: "middle" });
  return { kind: "measure", name, valueMm, along: "x", from, to, lineAtMm, label };
}

/** A dimension up and down: its text lies level beside its line, on the side away from the thing. */
export function measureUp(
  { name, valueMm, text, from, to }: Measured,
  lineAtMm: number,
  side: "left" | "right",
  widthMm: number,
): MeasureItem {
  const yMm = (from.yMm + to.yMm) / 2 + TEXT_MM * 0.36;
  const label =
    side === "left"
      ? textLine(text, yMm, { xMm: lineAtMm - BESIDE_MM, anchor: "end", widthMm })
      : textLine(text, yMm, { xMm: lineAtMm + BESIDE_MM, anchor: "start", widthMm });
  return { kind: "measure", name, valueMm, along: "y", from, to, lineAtMm, label };
}
