import type { ConstraintContext } from "./constraints.ts";
import { fewestPasses, found, PASSES_MAX } from "./fewest-passes.ts";
import type { CutSetup } from "./setup.ts";

/** The answer is as close as a person measures what another tool left, mm. Ours. */
const CLOSE_ENOUGH_MM = 0.1;

/** What is found closely may still be too much by as many such steps, once it is rounded to settings a person can make. */
const STEPS_BACK = 3;

/**
 * How much of a cut that is too heavy may be left for this bit, mm of depth or of overhang, rounded down to 0.1; undefined if even
 * that is too much, or if the bit can only be fed through all of it. The last of a cut is never heavier than more of it.
 */
export function mostLeftMm(context: ConstraintContext): number | undefined {
  const { setup } = context;
  if (setup.approach === "once") {
    return setup.sides === 2
      ? undefined
      : inMarks(farthestMm((leftMm) => isLightAtOnce(context, leftMm), setup.travelMm));
  }
  const mostMm = inMarks(reachedBackwardMm(context));
  for (let back = 0; mostMm !== undefined && back < STEPS_BACK; back += 1) {
    const leftMm = inMarks(mostMm - back * CLOSE_ENOUGH_MM);
    if (leftMm === undefined) return undefined;
    const left = { ...context, setup: { ...setup, travelMm: leftMm } };
    if (fewestPasses(left, { startMm: leftMm, finishBiteMm: 0 }) !== undefined) return leftMm;
  }
  return undefined;
}

/** From the end of the cut back, pass by pass, each as deep as it may be. */
function reachedBackwardMm(context: ConstraintContext): number {
  const { travelMm } = context.setup;
  let toMm = 0;
  for (let passes = 0; passes < PASSES_MAX && toMm < travelMm; passes += 1) {
    const fromMm = farthestMm((mm) => found(context, mm, toMm).loaded.heaviness <= 1, travelMm, toMm);
    if (fromMm - toMm < CLOSE_ENOUGH_MM / 2) break;
    toMm = fromMm;
  }
  return toMm;
}

/** What is made at once is set by how much stands out. */
function isLightAtOnce(context: ConstraintContext, leftMm: number): boolean {
  const setup: CutSetup = {
    ...context.setup,
    travelMm: leftMm,
    fenceMm: context.setup.greatestRadiusMm - leftMm,
  };
  return found({ ...context, setup }, leftMm, 0).loaded.heaviness <= 1;
}

/** The farthest place up to `mostMm` that holds, to half of what is close enough; every nearer one holds too. */
function farthestMm(holds: (mm: number) => boolean, mostMm: number, leastMm = 0): number {
  let enoughMm = leastMm;
  let tooMuchMm = mostMm;
  while (tooMuchMm - enoughMm > CLOSE_ENOUGH_MM / 2) {
    const middleMm = (enoughMm + tooMuchMm) / 2;
    if (holds(middleMm)) enoughMm = middleMm;
    else tooMuchMm = middleMm;
  }
  return enoughMm;
}

/** Rounded down to what a person measures; undefined if nothing is left of it. */
function inMarks(mm: number): number | undefined {
  const marks = Math.floor(mm / CLOSE_ENOUGH_MM + CLOSE_ENOUGH_MM);
  return marks <= 0 ? undefined : marks / (1 / CLOSE_ENOUGH_MM);
}
