import type { Fault } from "../../quantity/fault.ts";
import { lengthMm } from "../../quantity/field.ts";
import { line, type Outline } from "../outline.ts";

/** What a straight bit is described by. */
export const parallelDimensions = {
  diameterMm: lengthMm("Cutting diameter.", 1, 80),
  cuttingLengthMm: lengthMm("Length of the cutting edges from the tip.", 2, 120),
};

/** What a spiral bit is described by: ground from one rod, it is never thick. */
export const spiralDimensions = {
  diameterMm: lengthMm("Cutting diameter.", 1, 26),
  cuttingLengthMm: lengthMm("Length of the cutting edges from the tip.", 2, 110),
};

type ParallelDimensions = { readonly diameterMm: number; readonly cuttingLengthMm: number };

/** One segment, as wide as the bit. */
export function parallelOutline({ diameterMm, cuttingLengthMm }: ParallelDimensions): Outline {
  return [line(0, cuttingLengthMm, diameterMm / 2)];
}

/** Any diameter goes with any length. */
export function parallelFaults(): Fault[] {
  return [];
}
