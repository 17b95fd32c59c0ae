import { ASCENT_EM } from "../font/metrics.ts";
import { path, rectangle } from "../scene/path.ts";
import type { Item } from "../scene/scene.ts";
import { hatched, hatchOf } from "./hatch.ts";
import { MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "./page.ts";
import { paragraph, type Rows, textLine } from "./text.ts";

const SWATCH_MM = 7;
const NUMBER_MM = 7;
const TEXT_LEFT_MM = MARGIN_MM + SWATCH_MM + NUMBER_MM;
const APART_MM = 0.6;

/** What the hatches of a drawing stand for: one row for each text, with its hatch and its number from 1. */
export function hatchList(texts: readonly string[], topMm: number): Rows {
  const items: Item[] = [];
  let bottomMm = topMm;
  texts.forEach((text, index) => {
    const rows = paragraph(text, bottomMm + APART_MM, {
      xMm: TEXT_LEFT_MM,
      widthMm: PAGE_WIDTH_MM - MARGIN_MM - TEXT_LEFT_MM,
      sizeMm: SMALL_MM,
    });
    items.push(...swatch(index + 1, bottomMm + APART_MM), ...rows.items);
    bottomMm = rows.bottomMm + APART_MM;
  });
  return { items, bottomMm };
}

function swatch(number: number, topMm: number): Item[] {
  const box = rectangle(
    { xMm: MARGIN_MM, yMm: topMm + 0.3 },
    { xMm: MARGIN_MM + SWATCH_MM, yMm: topMm + SMALL_MM + 0.3 },
  );
  return [
    path({ of: "swatch", number }, box, "thin"),
    hatched({ of: "swatch", number }, box, hatchOf(number)),
    textLine(String(number), topMm + SMALL_MM * ASCENT_EM, {
      xMm: TEXT_LEFT_MM - 1.5,
      anchor: "end",
      sizeMm: SMALL_MM,
      weight: "bold",
    }),
  ];
}
