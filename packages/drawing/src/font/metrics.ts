import { SANS, SANS_BOLD } from "./generated/widths.ts";

/** The two cuts of the one face that everything is set in: DejaVu Sans, which is free and has the signs of many scripts. */
export type Weight = "normal" | "bold";

type FontData = { readonly unitsPerEm: number; readonly widths: string };

/** How far letters reach above and below the baseline, in heights of the letter. Source: the font's own measures. */
export const ASCENT_EM = Math.max(SANS.ascent, SANS_BOLD.ascent) / SANS.unitsPerEm;
export const DESCENT_EM = -Math.min(SANS.descent, SANS_BOLD.descent) / SANS.unitsPerEm;

/** What a sign that the font does not have takes: a square. */
const UNKNOWN_EM = 1;

const LAST_OF_ONE_PLACE = 0xffff;

/** Digits of the numbers of the lists. */
const BASE = 36;

const WIDTHS: Readonly<Record<Weight, ReadonlyMap<number, number>>> = {
  normal: widthsOf(SANS),
  bold: widthsOf(SANS_BOLD),
};

/**
 * Width in mm of a text on one line, in letters of this height: the sum of the advance widths of its signs, without kerning. A sign that the
 * font does not have counts as a square.
 * @example
 * textWidthMm("mm", 2.048, "normal") // → 3.99
 */
export function textWidthMm(text: string, sizeMm: number, weight: Weight): number {
  return textWidthEm(text, weight) * sizeMm;
}

/** The same in heights of the letter. */
export function textWidthEm(text: string, weight: Weight): number {
  const widths = WIDTHS[weight];
  let sum = 0;
  for (let index = 0; index < text.length; index += 1) {
    const code = text.codePointAt(index) ?? 0;
    sum += widths.get(code) ?? UNKNOWN_EM;
    // A sign beyond the first plane takes two places of the string.
    if (code > LAST_OF_ONE_PLACE) index += 1;
  }
  return sum;
}

/** Advance width of one sign in heights of the letter. */
export function signWidthEm(sign: string, weight: Weight): number {
  return WIDTHS[weight].get(sign.codePointAt(0) ?? 0) ?? UNKNOWN_EM;
}

/** Whether the font has every sign of a text: what it has not is set as a square. */
export function hasEverySign(text: string, weight: Weight): boolean {
  for (const sign of text) if (!WIDTHS[weight].has(sign.codePointAt(0) ?? 0)) return false;
  return true;
}

/** A list reads "place width,width*times place width …": the places of runs of signs, and the widths of the signs from there on. */
function widthsOf({ unitsPerEm, widths }: FontData): Map<number, number> {
  const found = new Map<number, number>();
  const words = widths.split(" ");
  for (let index = 0; index + 1 < words.length; index += 2) {
    let code = Number.parseInt(words[index] ?? "", BASE);
    for (const run of (words[index + 1] ?? "").split(",")) {
      const [width = "", times = "1"] = run.split("*");
      const em = Number.parseInt(width, BASE) / unitsPerEm;
      for (let count = Number.parseInt(times, BASE); count > 0; count -= 1) {
        found.set(code, em);
        code += 1;
      }
    }
  }
  return found;
}
