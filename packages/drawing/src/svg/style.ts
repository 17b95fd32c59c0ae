import { STROKES, type Stroke, TONES } from "../scene/look.ts";
import type { Fill, LineStyle } from "../scene/scene.ts";
import { short } from "./number.ts";

/** DejaVu Sans, by whose widths everything was laid out; any other face is squeezed into the same room. */
export const FONT_FAMILY = "'DejaVu Sans', sans-serif";

export const LINES: Readonly<Record<LineStyle, string>> = {
  none: "",
  thin: strokeSvg(STROKES.thin),
  medium: strokeSvg(STROKES.medium),
  heavy: strokeSvg(STROKES.heavy),
  dashed: strokeSvg(STROKES.dashed),
  chain: strokeSvg(STROKES.chain),
  erased: strokeSvg(STROKES.erased),
};

export const FILLS: Readonly<Record<Fill, string>> = {
  none: fillSvg(TONES.none),
  paper: fillSvg(TONES.paper),
  pale: fillSvg(TONES.pale),
  ink: fillSvg(TONES.ink),
};

function strokeSvg(stroke: Stroke | undefined): string {
  if (stroke === undefined) return "";
  const { widthMm, tone, dashMm = [], isRound } = stroke;
  const dash = dashMm.length === 0 ? "" : ` stroke-dasharray="${dashMm.map(lean).join(" ")}"`;
  return ` stroke="${tone}" stroke-width="${lean(widthMm)}"${dash}${isRound ? ` stroke-linejoin="round"` : ""}`;
}

function fillSvg(tone: string | undefined): string {
  return tone === undefined ? ` fill="none"` : ` fill="${tone}" fill-rule="evenodd"`;
}

/** Without the nought before the point: these stand in every path. */
function lean(mm: number): string {
  return short(mm).replace(/^0\./, ".");
}
