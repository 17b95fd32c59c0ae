import type { BitRecord, NewBit } from "./schema.ts";
import type { Hold } from "./state-schema.ts";

/** How small a bit is that is smaller than it may be used; undefined for one that is not. */
export function tooSmallMm({ form, smallestUsableDiameterMm = 0 }: NewBit): number | undefined {
  return "diameterMm" in form && form.diameterMm < smallestUsableDiameterMm ? form.diameterMm : undefined;
}

/** Holds a bit that is said to be smaller than it may be used. */
export function holdIfTooSmall(bit: NewBit, at: string): { readonly hold?: Hold } {
  const mm = tooSmallMm(bit);
  if (mm === undefined) return {};
  const reason = `It measures ${mm} mm, under its smallest usable diameter of ${bit.smallestUsableDiameterMm} mm.`;
  return { hold: { since: at, reason, cause: "size" } };
}

/** Whether a change is one of what a bit measures, or of how small it may be. */
export function hasOtherSize(current: BitRecord, next: BitRecord): boolean {
  return tooSmallMm(current) !== tooSmallMm(next);
}
