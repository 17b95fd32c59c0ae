import { fitted, wrapped } from "../../font/fit.ts";
import { textWidthMm } from "../../font/metrics.ts";
import { plain } from "../../font/plain.ts";
import type { GroupItem, Item, Scene, TextItem } from "../../scene/scene.ts";
import { type CodeModules, code } from "../code.ts";

/** A label: what it is called, lines of what is known, and a code that opens the record's page, if it has one. */
export type Label = {
  readonly code?: CodeModules;
  /** The shop's own short number, the largest of it. */
  readonly number?: string;
  readonly title: string;
  readonly lines: readonly string[];
};

/** How large a label is, and where it lies. */
export type LabelPlace = {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
};

type Row = {
  readonly text: string;
  readonly whole?: string;
  readonly sizeMm: number;
  readonly weight: TextItem["weight"];
};

/** A common size of label tape and sheets, mm. */
const OWN_SIZE = { widthMm: 62, heightMm: 29 };
const MARGIN_MM = 2;
/** A larger code is not read better, and takes what the words need: at most this, and this share of the width. */
const MOST_CODE_MM = 30;
const MOST_CODE_SHARE = 0.41;

/** Heights of letters, mm: a label of twice the height has letters of up to half as much again. Below the least nobody reads them. */
const NUMBER_MM = 4.6;
const TITLE_SIZES_MM = [4, 3.4, 3, 2.6];
const LINE_MM = 2.5;
const LEAST_LINE_MM = 1.8;
const MOST_GROWTH = 1.5;
/** What a title may take of a label's height, and a number with it; what is known of the thing comes before the whole of its name. */
const TITLE_SHARE = 0.5;
const NUMBERED_SHARE = 0.62;
const LEADING = 1.3;
/** Of a row, what lies above the baseline. */
const ABOVE_EM = 1;

/**
 * A label by itself, of our own size.
 * @example
 * labelScene({ title: "Cove", lines: ["Ø 38.1 mm"] }).widthMm // → 62
 */
export function labelScene(label: Label): Scene {
  const items = [labelAt(label, { xMm: 0, yMm: 0, ...OWN_SIZE })];
  return { ...OWN_SIZE, title: plain(label.title), description: plain(label.lines.join(", ")), items };
}

/** A label in its place on a sheet. Lines are set smaller to fit; what still does not is shortened, with the whole of it beside. */
export function labelAt(label: Label, { xMm, yMm, widthMm, heightMm }: LabelPlace): GroupItem {
  const codeMm = Math.min(heightMm - 2 * MARGIN_MM, widthMm * MOST_CODE_SHARE, MOST_CODE_MM);
  const growth = Math.min(MOST_GROWTH, Math.max(1, heightMm / OWN_SIZE.heightMm));
  const leftMm = xMm + MARGIN_MM + (label.code === undefined ? 0 : codeMm + MARGIN_MM);
  const roomMm = xMm + widthMm - MARGIN_MM - leftMm;
  const insideMm = heightMm - 2 * MARGIN_MM;
  const share = label.number === undefined ? TITLE_SHARE : NUMBERED_SHARE;
  const linesMm = label.lines.length * LEAST_LINE_MM * LEADING;
  const head = headRows(label, roomMm, Math.min(insideMm * share, insideMm - linesMm), growth);
  const rest = insideMm - head.reduce((sum, { sizeMm }) => sum + sizeMm * LEADING, 0);
  const rows = [...head, ...lineRows(label.lines, roomMm, rest, growth)];
  const wordsMm = rows.reduce((sum, { sizeMm }) => sum + sizeMm * LEADING, 0);
  let topMm = yMm + (heightMm - wordsMm) / 2;
  const texts = rows.map(({ sizeMm, ...row }): Item => {
    const item = {
      kind: "text",
      xMm: leftMm,
      yMm: topMm + sizeMm * ABOVE_EM,
      sizeMm,
      anchor: "start",
      ...row,
    } as const;
    topMm += sizeMm * LEADING;
    return item;
  });
  const words: GroupItem = { kind: "group", of: "paragraph", items: texts };
  const codeAt = { xMm: xMm + MARGIN_MM, yMm: yMm + (heightMm - codeMm) / 2 };
  const scanned = label.code === undefined ? [] : [code(label.code, codeAt, codeMm)];
  return { kind: "group", of: "label", items: [words, ...scanned] };
}

/** The number, and the title in the largest letters that it fits in whole, or shortened in the smallest. */
function headRows({ number, title }: Label, widthMm: number, heightMm: number, growth: number): Row[] {
  const numberMm = NUMBER_MM * growth;
  const own: Row[] =
    number === undefined
      ? []
      : [
          {
            ...fitted(number, { widthMm, sizeMm: numberMm, weight: "bold" }),
            sizeMm: numberMm,
            weight: "bold",
          },
        ];
  const leftMm = heightMm - own.length * numberMm * LEADING;
  const set = TITLE_SIZES_MM.map((each) => {
    const sizeMm = each * growth;
    const most = Math.max(1, Math.floor(leftMm / (sizeMm * LEADING)));
    return { sizeMm, lines: wrapped(title, { widthMm, sizeMm, weight: "bold" }, most) };
  });
  const whole = set.find(({ lines }) => lines.every((line) => line.whole === undefined));
  const { sizeMm, lines } = whole ?? set.at(-1) ?? { sizeMm: LINE_MM, lines: [] };
  return [...own, ...lines.map((line): Row => ({ ...line, sizeMm, weight: "bold" }))];
}

/** The lines, all of one size: a number is not cut when smaller letters can show it whole. */
function lineRows(lines: readonly string[], widthMm: number, heightMm: number, growth: number): Row[] {
  const most = Math.floor(heightMm / (LEAST_LINE_MM * LEADING));
  const shown =
    lines.length <= most ? lines : [...lines.slice(0, most - 1), lines.slice(most - 1).join(", ")];
  const fittingMm = Math.min(
    LINE_MM * growth,
    heightMm / (shown.length * LEADING),
    ...shown.map((line) => widthMm / Math.max(1, textWidthMm(line, 1, "normal"))),
  );
  const sizeMm = Math.max(LEAST_LINE_MM, Math.floor(fittingMm * 100) / 100);
  return shown.map((line) => ({
    ...fitted(line, { widthMm, sizeMm, weight: "normal" }),
    sizeMm,
    weight: "normal",
  }));
}
