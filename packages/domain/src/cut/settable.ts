import { MM_PER_INCH } from "../quantity/units.ts";

/** What a person sets a height or a fence by: a tenth of a millimetre, or a sixty-fourth of an inch. */
export type SetIn = "metric" | "imperial";

/** Marks a person can set, in each mm. Ours: 0.1 mm with a dial, 1/64 in by fractions. */
const MARKS_PER_MM: Readonly<Record<SetIn, number>> = { metric: 10, imperial: 64 / MM_PER_INCH };

/** A setting this near to a mark is on it: a share of the step between two. */
const ON_A_MARK = 1e-6;

/** A fence moved to the nearest mark on the side that removes less, mm. */
export function lighterFenceMm(fenceMm: number, setIn: SetIn | undefined): number {
  return setIn === undefined ? fenceMm : settableMm(fenceMm, setIn, Math.ceil);
}

/** A setting at the mark that `rounding` finds for it, mm. */
export function settableMm(settingMm: number, setIn: SetIn, rounding: (marks: number) => number): number {
  const perMm = MARKS_PER_MM[setIn];
  const marks = settingMm * perMm;
  const nearest = Math.round(marks);
  return (Math.abs(marks - nearest) < ON_A_MARK ? nearest : rounding(marks)) / perMm;
}
