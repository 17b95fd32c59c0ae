import type { Form } from "./form/registry.ts";

/** A router bit as the shop knows it. Only what a plan needs; names and places are the service's. */
export type Bit = {
  readonly form: Form;
  readonly shankDiameterMm: number;
  /** Cutting wings (flutes): how many edges pass a point in one turn. */
  readonly wings: number;
  /** Weighed mass. It always wins over the estimate. */
  readonly massG?: number;
  /** Total indicator run-out measured in its collet. */
  readonly runOutMm?: number;
  /** Shank showing between the collet and the head. */
  readonly stickOutMm?: number;
  /** Whether it cuts at its end, so that it may be plunged. Absent: not known, and then it is not. */
  readonly isEndCutting?: boolean;
  /** The greatest speed marked on the tool. */
  readonly markedMaxRpm?: number;
};

/** Accepted ranges of a bit's own fields; the form's dimensions carry theirs. */
export const BIT_RANGES = {
  shankDiameterMm: { min: 3, max: 20 },
  wings: { min: 1, max: 12 },
  massG: { min: 1, max: 3000 },
  runOutMm: { min: 0, max: 1 },
  stickOutMm: { min: 0, max: 60 },
  markedMaxRpm: { min: 1000, max: 60000 },
} as const;
