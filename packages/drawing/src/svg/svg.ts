import { textWidthMm } from "../font/metrics.ts";
import type { GroupItem, Item, MeasureItem, PathItem, Scene, TextItem } from "../scene/scene.ts";
import { textBox } from "../scene/text-box.ts";
import { escaped } from "./escape.ts";
import { measureLines } from "./measure-lines.ts";
import { short } from "./number.ts";
import { pathData } from "./path-data.ts";
import { FILLS, FONT_FAMILY, LINES } from "./style.ts";

export type SvgOptions = {
  /** Begins the ids in the text, so that several drawings can stand on one page: letters, digits and hyphens. Default: "drawing". */
  readonly idPrefix?: string;
};

/**
 * A scene as a whole SVG document in millimetres: with a title, a description and roles for a screen reader, and nothing in it that acts or is
 * fetched. What a path shows, what a measure measures and where the world lies are in `data-` attributes. Any string is safe in it.
 * @example
 * svg({ widthMm: 40, heightMm: 20, title: "A <bit>", description: "", items: [] }).includes("A &lt;bit&gt;") // → true
 */
export function svg(scene: Scene, { idPrefix = "drawing" }: SvgOptions = {}): string {
  const [width, height] = [short(scene.widthMm), short(scene.heightMm)];
  const prefix = escaped(idPrefix);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" ` +
    `role="img" aria-labelledby="${prefix}-title ${prefix}-desc" font-family="${FONT_FAMILY}" fill="#000">` +
    `<title id="${prefix}-title">${escaped(scene.title)}</title><desc id="${prefix}-desc">${escaped(scene.description)}</desc>` +
    `<rect width="${width}" height="${height}" fill="#fff"/>${itemsSvg(scene.items)}</svg>\n`
  );
}

function itemsSvg(items: readonly Item[]): string {
  let text = "";
  for (const item of items) text += itemSvg(item);
  return text;
}

function itemSvg(item: Item): string {
  switch (item.kind) {
    case "path":
      return pathSvg(item);
    case "text":
      return textSvg(item);
    case "measure":
      return measureSvg(item);
    case "group":
      return groupSvg(item);
  }
}

function pathSvg({ shows, contours, line, fill }: PathItem): string {
  const number = shows.number === undefined ? "" : ` data-number="${shows.number}"`;
  return `<path data-of="${escaped(shows.of)}"${number} d="${pathData(contours)}"${FILLS[fill]}${LINES[line]}/>`;
}

/** The measured width is written down, so that a machine without the font sets the text in the same room. */
function textSvg({ xMm, yMm, sizeMm, anchor, weight, text, whole }: TextItem): string {
  if (text === "") return "";
  const anchored = anchor === "start" ? "" : ` text-anchor="${anchor}"`;
  const weighted = weight === "normal" ? "" : ` font-weight="700"`;
  const width = `textLength="${short(textWidthMm(text, sizeMm, weight))}" lengthAdjust="spacingAndGlyphs"`;
  const hint = whole === undefined ? "" : `<title>${escaped(whole)}</title>`;
  return `<text x="${short(xMm)}" y="${short(yMm)}" font-size="${short(sizeMm)}"${anchored}${weighted} ${width} unicode-bidi="isolate">${hint}${escaped(text)}</text>`;
}

function measureSvg(measure: MeasureItem): string {
  const { lines, arrows } = measureLines(measure);
  return (
    `<g data-measure="${escaped(measure.name)}" data-value-mm="${measure.valueMm}" data-along="${measure.along}">` +
    `<path data-of="measure" d="${pathData(lines)}"${FILLS.none}${LINES.thin}/><path data-of="arrows" d="${pathData(arrows)}"/>` +
    `${clearedSvg(measure.label)}${textSvg(measure.label)}</g>`
  );
}

/** Paper under a text, so that no line runs through it. */
function clearedSvg(text: TextItem): string {
  const { leftMm, rightMm, topMm, bottomMm } = textBox(text);
  return `<rect x="${short(leftMm)}" y="${short(topMm)}" width="${short(rightMm - leftMm)}" height="${short(bottomMm - topMm)}" fill="#fff"/>`;
}

function groupSvg({ of, label, frame, items }: GroupItem): string {
  const named = label === undefined ? "" : ` role="group" aria-label="${escaped(label)}"`;
  const framed =
    frame === undefined
      ? ""
      : ` data-frame="${frame.originXMm} ${frame.originYMm} ${frame.scaleX} ${frame.scaleY}"`;
  return `<g data-group="${escaped(of)}"${named}${framed}>${itemsSvg(items)}</g>`;
}
