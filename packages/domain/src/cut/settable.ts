import { MM_PER_INCH } from "../quantity/units.ts";
import { type CutSetup, settingShortOfEnd } from "./setup.ts";

/** What a person sets a height or a fence by: a tenth of a millimetre, or a sixty-fourth of an inch. */
export type SetIn = "metric" | "imperial";

/** Marks a person can set, in each mm. Ours: 0.1 mm with a dial, 1/64 in by fractions. */
const MARKS_PER_MM: Readonly<Record<SetIn, number>> = { metric: 10, imperial: 64 / MM_PER_INCH };

/** A setting this near to a mark is on it: a share of the step between two. */
const ON_A_MARK = 1e-6;

/**
 * How far short of its end, mm, the moved setting is at the nearest mark on the side that removes less: a lower bit, or a fence farther
 * forward. The same when `setIn` is undefined: any setting can be made.
 */
export function lighterShortMm(setup: CutSetup, beforeEndMm: number, setIn: SetIn | undefined): number {
  return shortAtMark(setup, beforeEndMm, setIn, setup.approach === "height" ? Math.floor : Math.ceil);
}

/** The same on the side that removes more, so that less is left to the end; 0 if no mark lies before it. */
export function heavierShortMm(setup: CutSetup, beforeEndMm: number, setIn: SetIn | undefined): number {
  const rounding = setup.approach === "height" ? Math.ceil : Math.floor;
  return Math.max(0, shortAtMark(setup, beforeEndMm, setIn, rounding));
}

/** A fence moved to the nearest mark on the side that removes less, mm. */
export function lighterFenceMm(fenceMm: number, setIn: SetIn | undefined): number {
  return setIn === undefined ? fenceMm : atMark(fenceMm, MARKS_PER_MM[setIn], Math.ceil);
}

function shortAtMark(
  setup: CutSetup,
  beforeEndMm: number,
  setIn: SetIn | undefined,
  rounding: (marks: number) => number,
): number {
  if (setIn === undefined || setup.approach === "once" || beforeEndMm === 0) return beforeEndMm;
  const { heightMm, fenceMm } = settingShortOfEnd(setup, beforeEndMm);
  const perMm = MARKS_PER_MM[setIn];
  return setup.approach === "height"
    ? setup.heightMm - atMark(heightMm, perMm, rounding)
    : atMark(fenceMm, perMm, rounding) - setup.fenceMm;
}

function atMark(settingMm: number, perMm: number, rounding: (marks: number) => number): number {
  const marks = settingMm * perMm;
  const nearest = Math.round(marks);
  return (Math.abs(marks - nearest) < ON_A_MARK ? nearest : rounding(marks)) / perMm;
}
