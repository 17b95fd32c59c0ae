import { signWidthEm, textWidthEm, type Weight } from "./metrics.ts";
import { plain } from "./plain.ts";

export const ELLIPSIS = "…";

/** A text as it is shown, and the whole of it if it had to be shortened. */
export type Fitted = { readonly text: string; readonly whole?: string };

/** How wide letters are set. */
export type Room = { readonly widthMm: number; readonly sizeMm: number; readonly weight: Weight };

/**
 * A text that fits on one line so wide: itself, or its beginning with an ellipsis and the whole of it beside, so that nothing is lost.
 * @example
 * fitted("a very long name", { widthMm: 16, sizeMm: 3, weight: "normal" }) // → { text: "a very l…", whole: "a very long name" }
 */
export function fitted(given: string, { widthMm, sizeMm, weight }: Room): Fitted {
  const whole = plain(given);
  const mostEm = widthMm / sizeMm;
  const besideEm = mostEm - signWidthEm(ELLIPSIS, weight);
  let em = 0;
  let kept = 0;
  let place = 0;
  for (const sign of whole) {
    em += signWidthEm(sign, weight);
    if (em > mostEm) return { text: `${whole.slice(0, kept).trimEnd()}${ELLIPSIS}`, whole };
    place += sign.length;
    if (em <= besideEm) kept = place;
  }
  return { text: whole };
}

/**
 * A text on at most so many lines so wide, broken between words, or within one that is wider than a line. What is too long for them ends in
 * an ellipsis, and the last line has the whole beside it.
 * @example
 * wrapped("set the fence first", { widthMm: 25, sizeMm: 3, weight: "normal" }, 2).map(({ text }) => text) // → ["set the fence", "first"]
 */
export function wrapped(given: string, room: Room, most = Number.POSITIVE_INFINITY): Fitted[] {
  const { widthMm, sizeMm, weight } = room;
  const whole = plain(given);
  const mostEm = widthMm / sizeMm;
  const spaceEm = signWidthEm(" ", weight);
  const lines: string[] = [];
  let line = "";
  let lineEm = 0;
  let rest = whole;
  while (rest !== "" && lines.length < most) {
    const end = rest.indexOf(" ");
    const word = end === -1 ? rest : rest.slice(0, end);
    const next = end === -1 ? "" : rest.slice(end + 1);
    const wordEm = textWidthEm(word, weight);
    if (line !== "" && lineEm + spaceEm + wordEm <= mostEm) {
      line = `${line} ${word}`;
      lineEm += spaceEm + wordEm;
      rest = next;
    } else if (line !== "") {
      lines.push(line);
      line = "";
    } else if (wordEm <= mostEm) {
      line = word;
      lineEm = wordEm;
      rest = next;
    } else {
      const piece = startOf(word, mostEm, weight);
      lines.push(piece);
      rest = rest.slice(piece.length);
    }
  }
  if (line !== "" && lines.length < most) lines.push(line);
  else if (line !== "" || rest !== "") return shortened(lines, whole, room);
  return lines.map((text) => ({ text }));
}

/** The first signs of a word that fit, one at least. */
function startOf(word: string, mostEm: number, weight: Weight): string {
  let em = 0;
  let kept = "";
  for (const sign of word) {
    em += signWidthEm(sign, weight);
    if (em > mostEm && kept !== "") break;
    kept += sign;
  }
  return kept;
}

/** The lines that there is room for, the last one with an ellipsis. */
function shortened(lines: readonly string[], whole: string, { widthMm, sizeMm, weight }: Room): Fitted[] {
  const besideMm = widthMm - signWidthEm(ELLIPSIS, weight) * sizeMm;
  const last = startOf(lines.at(-1) ?? "", besideMm / sizeMm, weight).trimEnd();
  return [...lines.slice(0, -1).map((text) => ({ text })), { text: `${last}${ELLIPSIS}`, whole }];
}
