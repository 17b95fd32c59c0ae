import { create } from "qrcode";
import Type from "typebox";

/** A label: a QR code and lines of text, the first the largest. */
export type Label = { readonly url: string; readonly title: string; readonly lines: readonly string[] };

export const SVG_TYPE = "image/svg+xml";

/** What an operation says of an answer that is a label. */
export const LABEL_ANSWER = {
  200: {
    description: "A label of 62 × 29 mm with a QR code that opens the record's page.",
    content: { [SVG_TYPE]: { schema: Type.String({ description: "SVG, in millimetres." }) } },
  },
};

/** Width and height on paper, mm: a common size of label tape and sheets. */
const WIDTH_MM = 62;
const HEIGHT_MM = 29;
const MARGIN_MM = 2;
const QR_MM = HEIGHT_MM - 2 * MARGIN_MM;
/** White around the code, in modules: ISO/IEC 18004 asks for four. */
const QUIET_MODULES = 4;

const TITLE_MM = 4;
const LINE_MM = 3;
const LEADING = 1.3;
/** How wide a letter of a narrow sans-serif is at most, as a share of its height. */
const LETTER_WIDTH = 0.62;
const MOST_TITLE_LINES = 2;
const MOST_LINES = 4;

/** The label as SVG, in millimetres, ready to print. Text that does not fit is cut with an ellipsis. */
export function labelSvg({ url, title, lines }: Label): string {
  const left = MARGIN_MM + QR_MM + MARGIN_MM;
  const widthMm = WIDTH_MM - left - MARGIN_MM;
  const titles = wrapped(title, lettersIn(widthMm, TITLE_MM), MOST_TITLE_LINES);
  const rows = [
    ...titles.map((text) => ({ text, sizeMm: TITLE_MM, weight: 700 })),
    ...lines
      .slice(0, MOST_LINES)
      .map((text) => ({ text: cut(text, lettersIn(widthMm, LINE_MM)), sizeMm: LINE_MM, weight: 400 })),
  ];
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

function qrPath(url: string): string {
  const { size, path } = qrModules(url);
  return `<path transform="translate(${MARGIN_MM} ${MARGIN_MM}) scale(${round(QR_MM / size)})" d="${path}"/>`;
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

function wrapped(text: string, letters: number, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  if (lines.length <= most) return lines.map((line) => cut(line, letters));
  return [...lines.slice(0, most - 1), cut(lines.slice(most - 1).join(" "), letters)].map((line) =>
    cut(line, letters),
  );
}

function cut(text: string, letters: number): string {
  const signs = [...text];
  return signs.length <= letters ? text : `${signs.slice(0, letters - 1).join("")}…`;
}

function lettersIn(widthMm: number, sizeMm: number): number {
  return Math.floor(widthMm / (sizeMm * LETTER_WIDTH));
}

/** Text for XML: nothing in it can be markup, and signs that XML has no place for are left out. */
function escaped(text: string): string {
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
