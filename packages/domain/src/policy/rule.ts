/** One threshold of judgement: a number people may tighten, with why it is what it is. */
export type Rule = {
  readonly default: number;
  readonly unit: string;
  /** Which of two values is the stricter one. */
  readonly stricter: "lower" | "higher";
  readonly min: number;
  readonly max: number;
  readonly meaning: string;
  readonly source: "standard" | "common practice" | "ours";
  readonly reason: string;
};
