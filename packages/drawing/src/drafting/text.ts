import { type Fitted, fitted, wrapped } from "../font/fit.ts";
import { ASCENT_EM, type Weight } from "../font/metrics.ts";
import type { Item, TextItem } from "../scene/scene.ts";
import { INNER_WIDTH_MM, LEADING, MARGIN_MM, TEXT_MM, TITLE_MM } from "./page.ts";

/** How and where a text is set; what is not said is that of running text at the left margin. */
export type TextStyle = {
  readonly xMm?: number;
  readonly widthMm?: number;
  readonly sizeMm?: number;
  readonly weight?: Weight;
  readonly anchor?: TextItem["anchor"];
};

/** Rows of a page, and where the next may begin. */
export type Rows = { readonly items: readonly Item[]; readonly bottomMm: number };

/** One line whose baseline lies at `yMm`, shortened to its width. */
export function textLine(given: string, yMm: number, style: TextStyle = {}): TextItem {
  const { sizeMm = TEXT_MM, weight = "normal", widthMm = INNER_WIDTH_MM } = style;
  return lineAt(fitted(given, { widthMm, sizeMm, weight }), yMm, style);
}

/** A paragraph under `topMm`, on at most so many lines. */
export function paragraph(given: string, topMm: number, style: TextStyle = {}, most?: number): Rows {
  const { sizeMm = TEXT_MM, weight = "normal", widthMm = INNER_WIDTH_MM } = style;
  const lines = wrapped(given, { widthMm, sizeMm, weight }, most);
  const items = lines.map((line, index) =>
    lineAt(line, topMm + (ASCENT_EM + index * LEADING) * sizeMm, style),
  );
  return { items, bottomMm: topMm + lines.length * LEADING * sizeMm };
}

/** Paragraphs one under the other. */
export function paragraphs(texts: readonly string[], topMm: number, style: TextStyle = {}): Rows {
  const items: Item[] = [];
  let bottomMm = topMm;
  for (const text of texts) {
    const rows = paragraph(text, bottomMm, style);
    items.push(...rows.items);
    bottomMm = rows.bottomMm;
  }
  return { items, bottomMm };
}

/** What a picture is of, on two lines at most. */
export function heading(title: string, topMm = MARGIN_MM): Rows {
  return paragraph(title, topMm, { sizeMm: TITLE_MM, weight: "bold" }, 2);
}

function lineAt({ text, whole }: Fitted, yMm: number, style: TextStyle): TextItem {
  const { xMm = MARGIN_MM, sizeMm = TEXT_MM, weight = "normal", anchor = "start" } = style;
  return { kind: "text", xMm, yMm, sizeMm, anchor, weight, text, ...(whole !== undefined && { whole }) };
}
