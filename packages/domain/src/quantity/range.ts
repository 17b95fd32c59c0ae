import type { Fault } from "./fault.ts";

export type Range = { readonly min: number; readonly max: number };

/** A fault when the value is not a finite number inside the range; an absent value passes. */
export function rangeFaults(pointer: string, given: number | undefined, range: Range): Fault[] {
  if (given === undefined) return [];
  if (!Number.isFinite(given))
    return [{ pointer, code: "not-finite", values: { accepted: { min: range.min, max: range.max } } }];
  if (given >= range.min && given <= range.max) return [];
  return [{ pointer, code: "out-of-range", values: { given, min: range.min, max: range.max } }];
}
