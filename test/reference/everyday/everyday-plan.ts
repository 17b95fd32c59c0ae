import type { Bit, Cut, Form, GuideName, Mounting } from "@rimwise/domain";

/** What a woodworker expects of a plan for an everyday cut. Common practice. */
export type Expected = {
  readonly verdict: "runs" | "do-not-run";
  readonly guide?: GuideName;
  /** How much of the edges stands out of the table or base at the end, mm: measured at the cutter, not at its bearing. */
  readonly edgesOutMm?: number;
  /** From the bit's centre to the fence at the end, mm; negative past it. */
  readonly fenceMm?: number;
  /** The fewest passes and the most. */
  readonly passes?: readonly [number, number];
  readonly maxRpm?: number;
  readonly says?: readonly RegExp[];
  readonly neverSays?: readonly RegExp[];
};

export type EverydayPlan = {
  readonly name: string;
  readonly bit: Bit;
  readonly mounting: Mounting;
  readonly woodId?: string;
  readonly cut: Cut;
  readonly expected: Expected;
};

/** A carbide-tipped bit on a half-inch shank with two wings, as most are. */
export function bitOf(form: Form, more: Partial<Bit> = {}): Bit {
  return { form, shankDiameterMm: 12.7, wings: 2, ...more };
}

/** A board of 19 mm. */
export const BOARD = { lengthMm: 600, widthMm: 150, thicknessMm: 19 } as const;
export const LONG_EDGE = [{ lengthMm: 600, grain: "long" }] as const;
export const FOUR_EDGES = [
  { lengthMm: 300, grain: "end" },
  { lengthMm: 450, grain: "long" },
  { lengthMm: 300, grain: "end" },
  { lengthMm: 450, grain: "long" },
] as const;

/** The two ways that matter most: work along a table's fence, and the router along an edge. */
export const RIGHT_TO_LEFT = /work from right to left/;
export const LEFT_TO_RIGHT = /router from left to right/;
