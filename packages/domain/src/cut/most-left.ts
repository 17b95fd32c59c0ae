import type { ConstraintContext } from "./constraints.ts";
import { findPasses } from "./passes.ts";
import type { CutSetup } from "./setup.ts";

/** The answer is as close as a person measures what another tool left, mm. Ours. */
const CLOSE_ENOUGH_MM = 0.1;

/**
 * How much of a cut that is too heavy may be left for this bit, mm of depth or of overhang, rounded down to 0.1; undefined if even
 * that is too much, or if the bit can only be fed through all of it. The last of a cut is never heavier than more of it.
 */
export function mostLeftMm(context: ConstraintContext): number | undefined {
  const { setup } = context;
  if (setup.sides === 2 && setup.approach === "once") return undefined;
  let enoughMm = 0;
  let tooMuchMm = setup.travelMm;
  while (tooMuchMm - enoughMm > CLOSE_ENOUGH_MM / 2) {
    const leftMm = (enoughMm + tooMuchMm) / 2;
    if (findPasses({ ...context, setup: withLeft(setup, leftMm) }) === undefined) tooMuchMm = leftMm;
    else enoughMm = leftMm;
  }
  const marks = Math.floor(enoughMm / CLOSE_ENOUGH_MM + CLOSE_ENOUGH_MM);
  return marks === 0 ? undefined : marks / (1 / CLOSE_ENOUGH_MM);
}

/** The cut with so much of its travel left. What is made at once is set by how much stands out. */
function withLeft(setup: CutSetup, leftMm: number): CutSetup {
  if (setup.approach !== "once") return { ...setup, travelMm: leftMm };
  return { ...setup, travelMm: leftMm, fenceMm: setup.greatestRadiusMm - leftMm };
}
