import type { Fault } from "../quantity/fault.ts";
import type { Router } from "./router.ts";

/** Diameters this close are one size of shank, mm: a collet closes by less. Ours. */
export const SAME_SIZE_MM = 0.1;

/** A shank thicker than any collet. Pointers start at the bit. */
export function shankFaults(shankDiameterMm: number, { colletDiametersMm }: Router): Fault[] {
  if (colletDiametersMm === undefined || colletDiametersMm.length === 0) return [];
  const largest = Math.max(...colletDiametersMm);
  if (shankDiameterMm <= largest + SAME_SIZE_MM) return [];
  return [
    { pointer: "/shankDiameterMm", code: "shank-too-thick", values: { given: shankDiameterMm, largest } },
  ];
}

/**
 * Whether a collet of the router is made for this shank. Collets that are not known are not held against it; an empty list
 * says that none is fit for use.
 * @example
 * hasColletFor(12, { minRpm: 10_000, maxRpm: 22_000, colletDiametersMm: [6.35, 12.7] }) // → false
 */
export function hasColletFor(shankDiameterMm: number, { colletDiametersMm }: Router): boolean {
  if (colletDiametersMm === undefined) return true;
  return colletDiametersMm.some((diameterMm) => isSameSize(diameterMm, shankDiameterMm));
}

/**
 * Whether two diameters, mm, are one size of shank and collet: apart by no more than `SAME_SIZE_MM` (ours).
 * @example
 * isSameSize(12.7, 12.75) // → true
 */
export function isSameSize(oneMm: number, otherMm: number): boolean {
  return Math.abs(oneMm - otherMm) <= SAME_SIZE_MM;
}
