import type { Fill, LineStyle } from "./scene.ts";

/** How a line is drawn, whatever it is written as; `tone` is ink or paper. */
export type Stroke = {
  readonly widthMm: number;
  readonly tone: "#000" | "#fff";
  /** Lengths of dashes and gaps in turn, mm. */
  readonly dashMm?: readonly number[];
  readonly isRound?: true;
};

/** Widths of line about a factor of 1.4 to 2 apart, after ISO 128, from memory. A line style without one is not drawn. */
export const STROKES: Readonly<Record<LineStyle, Stroke | undefined>> = {
  none: undefined,
  thin: { widthMm: 0.18, tone: "#000" },
  medium: { widthMm: 0.35, tone: "#000" },
  heavy: { widthMm: 0.7, tone: "#000", isRound: true },
  dashed: { widthMm: 0.25, tone: "#000", dashMm: [1.6, 1] },
  chain: { widthMm: 0.18, tone: "#000", dashMm: [4, 0.8, 0.6, 0.8] },
  erased: { widthMm: 0.6, tone: "#fff" },
};

/** The tone that fills a path; what an odd number of its contours surrounds is inside. */
export const TONES: Readonly<Record<Fill, string | undefined>> = {
  none: undefined,
  paper: "#fff",
  pale: "#e4e4e4",
  ink: "#000",
};
