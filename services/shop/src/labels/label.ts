import { create } from "qrcode";

/** A label: a QR code and lines of text, the first the largest. */
export type Label = { readonly url: string; readonly title: string; readonly lines: readonly string[] };

type Row = { readonly text: string; readonly sizeMm: number; readonly weight: number };

/** Width and height on paper, mm: a common size of label tape and sheets. */
const WIDTH_MM = 62;
const HEIGHT_MM = 29;
const MARGIN_MM = 2;
const QR_MM = HEIGHT_MM - 2 * MARGIN_MM;
/** White around the code, in modules: ISO/IEC 18004 asks for four. */
const QUIET_MODULES = 4;

/** Heights of letters of the title, the largest first, and what the title may take of the label. */
const TITLE_SIZES_MM = [4, 3.4, 3];
const TITLE_MOST_MM = 12;
/** Heights of letters of the other lines: below the least nobody reads them. */
const LINE_MM = 2.5;
const LEAST_LINE_MM = 1.8;
const LEADING = 1.3;
const MOST_LINES = 6;
const ELLIPSIS = "…";

/** The label as SVG, in millimetres, ready to print. Lines are set smaller to fit; what still does not is cut with an ellipsis. */
export function labelSvg({ url, title, lines }: Label): string {
  const left = MARGIN_MM + QR_MM + MARGIN_MM;
  const widthMm = WIDTH_MM - left - MARGIN_MM;
  const head = titleRows(title, widthMm);
  const leftMm = QR_MM - head.reduce((sum, { sizeMm }) => sum + sizeMm * LEADING, 0);
  const rows = [...head, ...lineRows(lines, widthMm, leftMm)];
  let y = MARGIN_MM;
  const texts = rows.map(({ text, sizeMm, weight }) => {
    y += sizeMm * LEADING;
    const at = `x="${left}" y="${round(y - sizeMm * (LEADING - 1))}"`;
    return `<text ${at} font-size="${sizeMm}" font-weight="${weight}">${escaped(text)}</text>`;
  });
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH_MM}mm" height="${HEIGHT_MM}mm" viewBox="0 0 ${WIDTH_MM} ${HEIGHT_MM}">` +
    `<rect width="${WIDTH_MM}" height="${HEIGHT_MM}" fill="#fff"/>${qrPath(url)}` +
    `<g font-family="Arial, Helvetica, sans-serif" fill="#000">${texts.join("")}</g></svg>\n`
  );
}

/** The title in the largest letters that it fits in whole, or cut in the smallest. */
function titleRows(title: string, widthMm: number): Row[] {
  const set = TITLE_SIZES_MM.map((sizeMm) => ({
    sizeMm,
    lines: wrapped(title, widthMm / sizeMm),
    most: Math.floor(TITLE_MOST_MM / (sizeMm * LEADING)),
  }));
  const fitting = set.find(
    ({ sizeMm, lines, most }) =>
      lines.length <= most && lines.every((line) => widthOf(line) <= widthMm / sizeMm),
  );
  const { sizeMm, lines, most } = fitting ?? set.at(-1) ?? { sizeMm: LINE_MM, lines: [title], most: 1 };
  return shortened(lines, most).map((line) => ({ text: cut(line, widthMm / sizeMm), sizeMm, weight: 700 }));
}

/** The lines, all of one size: a number is not cut when smaller letters can show it whole. */
function lineRows(lines: readonly string[], widthMm: number, heightMm: number): Row[] {
  const shown = lines.slice(0, MOST_LINES);
  const fittingMm = Math.min(
    LINE_MM,
    heightMm / (shown.length * LEADING),
    ...shown.map((line) => widthMm / widthOf(line)),
  );
  const sizeMm = Math.max(LEAST_LINE_MM, Math.floor(fittingMm * 100) / 100);
  return shown.map((line) => ({ text: cut(line, widthMm / sizeMm), sizeMm, weight: 400 }));
}

function qrPath(url: string): string {
  const { size, path } = qrModules(url);
  return `<path shape-rendering="crispEdges" transform="translate(${MARGIN_MM} ${MARGIN_MM}) scale(${round(QR_MM / size)})" d="${path}"/>`;
}

/** The dark modules as one path, a square each, with the quiet zone around. */
function qrModules(url: string): { readonly size: number; readonly path: string } {
  const { modules } = create(url, { errorCorrectionLevel: "M" });
  const squares: string[] = [];
  for (let row = 0; row < modules.size; row += 1) {
    for (let column = 0; column < modules.size; column += 1) {
      if (modules.get(row, column)) squares.push(`M${column + QUIET_MODULES} ${row + QUIET_MODULES}h1v1h-1z`);
    }
  }
  return { size: modules.size + 2 * QUIET_MODULES, path: squares.join("") };
}

/** Words on as few lines as this width allows; widths are in heights of a letter. */
function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && widthOf(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** At most so many lines: the last takes the rest, to be cut. */
function shortened(lines: readonly string[], most: number): string[] {
  if (lines.length <= most) return [...lines];
  return [...lines.slice(0, most - 1), lines.slice(most - 1).join(" ")];
}

function cut(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  const signs = [...text];
  while (signs.length > 0 && widthOf(`${signs.join("")}${ELLIPSIS}`) > width) signs.pop();
  return `${signs.join("").trimEnd()}${ELLIPSIS}`;
}

function widthOf(text: string): number {
  return [...text].reduce((sum, sign) => sum + widthOfSign(sign), 0);
}

/**
 * How wide a sign is at most, in heights of a letter: after the widths of Helvetica Bold in its font metrics, from memory,
 * rounded up, as are those of other scripts, which fill a square.
 */
function widthOfSign(sign: string): number {
  if (/[MWmw%@…—]/.test(sign)) return 1;
  if (/[A-Z&Ø]/.test(sign)) return 0.78;
  return /[\u{20}-\u{7E}\u{A0}-\u{24F}]/u.test(sign) ? 0.62 : 1;
}

/** Text for XML: nothing in it can be markup, and signs that XML has no place for are omitted. */
export function escaped(text: string): string {
  return text
    .replaceAll(/[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
