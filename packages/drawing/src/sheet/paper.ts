/** A paper: its size as it lies, and how large running text is set on it. */
export type Paper = {
  readonly meaning: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marginMm: number;
  readonly textMm: number;
};

/** An inch is exactly this, mm. */
const INCH_MM = 25.4;

/** Papers by name. Sizes: ISO 216 for A, ANSI/ASME Y14.1 for letter, both from memory; cards are `common practice`. */
export const PAPERS = {
  a5: { meaning: "A5, 148 × 210 mm (ISO 216).", widthMm: 148, heightMm: 210, marginMm: 9, textMm: 3 },
  a4: { meaning: "A4, 210 × 297 mm (ISO 216).", widthMm: 210, heightMm: 297, marginMm: 14, textMm: 3.5 },
  a3: { meaning: "A3, 297 × 420 mm (ISO 216).", widthMm: 297, heightMm: 420, marginMm: 15, textMm: 4.6 },
  letter: {
    meaning: "Letter, 8-1/2 × 11 in.",
    widthMm: 8.5 * INCH_MM,
    heightMm: 11 * INCH_MM,
    marginMm: 14,
    textMm: 3.5,
  },
  "half-letter": {
    meaning: "Half of a letter, 5-1/2 × 8-1/2 in.",
    widthMm: 5.5 * INCH_MM,
    heightMm: 8.5 * INCH_MM,
    marginMm: 9,
    textMm: 3,
  },
  "index-card": {
    meaning: "An index card, 127 × 76 mm (5 × 3 in).",
    widthMm: 127,
    heightMm: 76,
    marginMm: 5,
    textMm: 2.7,
  },
} as const satisfies Readonly<Record<string, Paper>>;

export type PaperName = keyof typeof PAPERS;

/** What is lower than this has room for what is needed at the machine and no more. */
const BRIEF_BELOW_MM = 120;

export function isBrief({ heightMm }: Paper): boolean {
  return heightMm < BRIEF_BELOW_MM;
}

/** The same paper lying on its long side. */
export function landscape(paper: Paper): Paper {
  const { widthMm, heightMm } = paper;
  return { ...paper, widthMm: Math.max(widthMm, heightMm), heightMm: Math.min(widthMm, heightMm) };
}

/** How wide a page is between its margins, mm. */
export function innerWidthMm({ widthMm, marginMm }: Paper): number {
  return widthMm - 2 * marginMm;
}
