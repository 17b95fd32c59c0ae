import { wrapped } from "../font/fit.ts";
import { ASCENT_EM, type Weight } from "../font/metrics.ts";
import { circle, path, rectangle } from "../scene/path.ts";
import type { Item, Scene, TextItem } from "../scene/scene.ts";
import { innerWidthMm, isBrief, type Paper } from "./paper.ts";
import { placed } from "./placed.ts";
import type { SheetPart } from "./sheet.ts";

/** As much of a page as is never parted: how high it is, and what it is when its top lies somewhere. */
export type Strip = { readonly heightMm: number; readonly at: (topMm: number) => readonly Item[] };

/** One thing on a sheet: strips one under the other, that may go on to another page between two of them. */
export type Block = {
  readonly part: SheetPart;
  /** Said of a picture to somebody who does not see it. */
  readonly label?: string;
  readonly strips: readonly Strip[];
  /** Repeated on each page it goes on to. */
  readonly head?: Strip;
  /** Room left before it, mm, except at the top of a page; less than none beside what is before it. */
  readonly beforeMm: number;
  /** Begins on no page without the start of what comes next. */
  readonly keepsNext?: true;
  /** Is not parted if it fits on a page by itself. */
  readonly isWhole?: true;
};

/** How a text is set on a sheet. */
export type Setting = {
  readonly sizeMm: number;
  readonly weight?: Weight;
  readonly xMm: number;
  readonly widthMm: number;
  readonly anchor?: TextItem["anchor"];
  /** What is longer is shortened. Default: all of it. */
  readonly mostLines?: number;
};

/** From one baseline to the next, in heights of the letter. */
const LEADING = 1.32;

/** Nothing on a sheet is set smaller, mm: about 7 points. */
export const LEAST_TEXT_MM = 2.4;

const SMALL_RATIO = 0.87;
const HEADING_RATIO = 1.16;
const TITLE_RATIO = 1.55;
const BOX_MM = 2.2;
/** What a sign or a number of a list hangs out, in heights of the letter. */
const BULLET_EM = 1.1;
const NUMBER_EM = 2.3;

/** Heights of letters on a paper. */
export function smallMm({ textMm }: Paper): number {
  return Math.max(LEAST_TEXT_MM, textMm * SMALL_RATIO);
}

/** The lines of a text, each a strip. The line breaks of the writer are kept. */
export function textStrips(given: string, setting: Setting): Strip[] {
  const { sizeMm, weight = "normal", xMm, widthMm, anchor = "start", mostLines } = setting;
  const room = { widthMm, sizeMm, weight };
  const written = mostLines === undefined ? given.split(/\r\n|[\n\r\u2028\u2029]/) : [given];
  const style = { kind: "text", xMm, sizeMm, anchor, weight } as const;
  return written
    .flatMap((line) => wrapped(line, room, mostLines))
    .map((shown) => ({
      heightMm: LEADING * sizeMm,
      at: (topMm) => [{ ...style, yMm: topMm + ASCENT_EM * sizeMm, ...shown }],
    }));
}

/** Strips as one. */
export function stacked(strips: readonly Strip[]): Strip {
  return {
    heightMm: strips.reduce((sum, { heightMm }) => sum + heightMm, 0),
    at: (topMm) => {
      let atMm = topMm;
      return strips.flatMap(({ heightMm, at }) => {
        const items = at(atMm);
        atMm += heightMm;
        return items;
      });
    },
  };
}

/** What the sheet is of. */
export function title(paper: Paper, given: string): Block {
  const setting = { ...across(paper), sizeMm: paper.textMm * TITLE_RATIO, weight: "bold" } as const;
  return { part: "title", strips: textStrips(given, setting), beforeMm: 0, keepsNext: true, isWhole: true };
}

export function heading(paper: Paper, given: string): Block {
  const setting = { ...across(paper), sizeMm: paper.textMm * HEADING_RATIO, weight: "bold" } as const;
  return {
    part: "heading",
    strips: textStrips(given, setting),
    beforeMm: paper.textMm,
    keepsNext: true,
    isWhole: true,
  };
}

/** Running text; small when it only adds. */
export function paragraph(
  paper: Paper,
  given: string,
  { isSmall = false, weight = "normal" }: { readonly isSmall?: boolean; readonly weight?: Weight } = {},
): Block {
  const sizeMm = isSmall ? smallMm(paper) : paper.textMm;
  return {
    part: "paragraph",
    strips: textStrips(given, { ...across(paper), sizeMm, weight }),
    beforeMm: paper.textMm * 0.5,
  };
}

/** One thing of a list: its sign or number hangs beside it. */
export function listItem(paper: Paper, given: string, sign: string | undefined, isSmall = false): Block {
  const sizeMm = isSmall ? smallMm(paper) : paper.textMm;
  const { xMm, widthMm } = across(paper);
  const hangMm = sizeMm * (sign === undefined ? BULLET_EM : NUMBER_EM);
  const strips = textStrips(given, { sizeMm, xMm: xMm + hangMm, widthMm: widthMm - hangMm });
  const [first, ...rest] = strips;
  if (first === undefined) return { part: "list-item", strips: [], beforeMm: 0 };
  const signed: Strip = {
    heightMm: first.heightMm,
    at: (topMm) => [
      ...(sign === undefined
        ? bullet(xMm + sizeMm * 0.4, topMm + (ASCENT_EM - 0.3) * sizeMm, sizeMm)
        : textStrips(sign, { sizeMm, weight: "bold", xMm, widthMm: hangMm }).flatMap(({ at }) => at(topMm))),
      ...first.at(topMm),
    ],
  };
  return { part: "list-item", strips: [signed, ...rest], beforeMm: paper.textMm * 0.18, isWhole: true };
}

/** A picture in the middle of the page, as large as fits in this room, and never larger than it was drawn. */
export function picture(paper: Paper, scene: Scene, mostHeightMm: number): Block {
  const { xMm, widthMm } = across(paper);
  const scale = Math.min(1, widthMm / scene.widthMm, mostHeightMm / scene.heightMm);
  const leftMm = xMm + (widthMm - scale * scene.widthMm) / 2;
  const at = (topMm: number) => placed(scene, { xMm: leftMm, yMm: topMm, scale });
  const { label = scene.title } = at(0);
  const strip: Strip = { heightMm: scale * scene.heightMm, at: (topMm) => at(topMm).items };
  return { part: "picture", label, strips: [strip], beforeMm: paper.textMm * 0.6, isWhole: true };
}

/** Strips in a frame, which is never parted. */
export function boxed(paper: Paper, strips: readonly Strip[]): Block {
  const { xMm, widthMm } = across(paper);
  const inside = stacked(strips);
  const heightMm = inside.heightMm + 2 * BOX_MM;
  const strip: Strip = {
    heightMm,
    at: (topMm) => [
      path(
        { of: "frame" },
        rectangle({ xMm, yMm: topMm }, { xMm: xMm + widthMm, yMm: topMm + heightMm }),
        "heavy",
      ),
      ...inside.at(topMm + BOX_MM),
    ],
  };
  return { part: "paragraph", strips: [strip], beforeMm: paper.textMm * 0.5, isWhole: true };
}

/** Where a text may stand in a box. */
export function insideBox(paper: Paper): { readonly xMm: number; readonly widthMm: number } {
  const { xMm, widthMm } = across(paper);
  return { xMm: xMm + 1.4 * BOX_MM, widthMm: widthMm - 2.8 * BOX_MM };
}

function across(paper: Paper): { readonly xMm: number; readonly widthMm: number } {
  return { xMm: paper.marginMm, widthMm: innerWidthMm(paper) };
}

function bullet(xMm: number, yMm: number, sizeMm: number): Item[] {
  return [path({ of: "bullet" }, circle({ xMm, yMm }, sizeMm * 0.16), "none", "ink")];
}

/** A heading with a list under it; nothing of an empty list. */
export function listed(paper: Paper, name: string, texts: readonly string[]): Block[] {
  if (texts.length === 0) return [];
  return [heading(paper, name), ...texts.map((text) => listItem(paper, text, undefined, isBrief(paper)))];
}
