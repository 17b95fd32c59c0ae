import { PAPERS, type Paper } from "../paper.ts";

/** A label stock: how labels lie on a sheet, from its upper left corner. */
export type Stock = {
  readonly meaning: string;
  readonly paper: Pick<Paper, "widthMm" | "heightMm">;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly leftMm: number;
  readonly topMm: number;
  /** From one label to the next. */
  readonly stepXMm: number;
  readonly stepYMm: number;
  /** Plain paper has a line to cut along. */
  readonly isCut: boolean;
};

const INCH_MM = 25.4;

/** 62 × 29 mm, the size of our own labels, on tape or cut of plain paper: a common size of label tape. */
const OWN = { labelWidthMm: 62, labelHeightMm: 29 };

/** Label stocks by name. Sizes and margins are `common practice`: print one page on plain paper first and hold it against the stock. */
export const STOCKS = {
  "a4-plain": {
    meaning: "27 labels of 62 × 29 mm on plain A4 paper, to cut out.",
    paper: PAPERS.a4,
    ...OWN,
    columns: 3,
    rows: 9,
    leftMm: 12,
    topMm: 18,
    stepXMm: 62,
    stepYMm: 29,
    isCut: true,
  },
  "letter-plain": {
    meaning: "27 labels of 62 × 29 mm on plain letter paper, to cut out.",
    paper: PAPERS.letter,
    ...OWN,
    columns: 3,
    rows: 9,
    leftMm: 14.95,
    topMm: 9.2,
    stepXMm: 62,
    stepYMm: 29,
    isCut: true,
  },
  tape: {
    meaning: "One label of 62 × 29 mm a page, for a printer of label tape.",
    paper: { widthMm: OWN.labelWidthMm, heightMm: OWN.labelHeightMm },
    ...OWN,
    columns: 1,
    rows: 1,
    leftMm: 0,
    topMm: 0,
    stepXMm: 62,
    stepYMm: 29,
    isCut: false,
  },
  "a4-3x8": {
    meaning: "24 labels of 70 × 37 mm on A4, without gaps.",
    paper: PAPERS.a4,
    labelWidthMm: 70,
    labelHeightMm: 37,
    columns: 3,
    rows: 8,
    leftMm: 0,
    topMm: 0.5,
    stepXMm: 70,
    stepYMm: 37,
    isCut: false,
  },
  "a4-3x7": {
    meaning: "21 labels of 63.5 × 38.1 mm on A4.",
    paper: PAPERS.a4,
    labelWidthMm: 63.5,
    labelHeightMm: 38.1,
    columns: 3,
    rows: 7,
    leftMm: 7.2,
    topMm: 15.15,
    stepXMm: 66.04,
    stepYMm: 38.1,
    isCut: false,
  },
  "letter-3x10": {
    meaning: "30 labels of 2-5/8 × 1 in on letter paper.",
    paper: PAPERS.letter,
    labelWidthMm: 2.625 * INCH_MM,
    labelHeightMm: INCH_MM,
    columns: 3,
    rows: 10,
    leftMm: 0.1875 * INCH_MM,
    topMm: 0.5 * INCH_MM,
    stepXMm: 2.75 * INCH_MM,
    stepYMm: INCH_MM,
    isCut: false,
  },
  "letter-2x5": {
    meaning: "10 labels of 4 × 2 in on letter paper.",
    paper: PAPERS.letter,
    labelWidthMm: 4 * INCH_MM,
    labelHeightMm: 2 * INCH_MM,
    columns: 2,
    rows: 5,
    leftMm: 0.15625 * INCH_MM,
    topMm: 0.5 * INCH_MM,
    stepXMm: 4.1875 * INCH_MM,
    stepYMm: 2 * INCH_MM,
    isCut: false,
  },
} as const satisfies Readonly<Record<string, Stock>>;

export type StockName = keyof typeof STOCKS;
