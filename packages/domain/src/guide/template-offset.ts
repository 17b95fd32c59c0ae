import type { BushingLine } from "./step.ts";

/** A bushing's wall and the gap to the bit, on both sides together, mm: about 1 mm each. From memory. */
const LEAST_ROOM_MM = 2;

/**
 * How far the cut lies from the template's line, mm: half of what runs along it less the bit, on every side; of a plug, whose far wall
 * counts, half of both together. Under 0 the cut goes past the line. Source: geometry.
 */
export function templateOffsetMm(line: BushingLine, runsDiameterMm: number, bitDiameterMm: number): number {
  return (line === "plug" ? runsDiameterMm + bitDiameterMm : runsDiameterMm - bitDiameterMm) / 2;
}

/** The bushing of the other part of an inlay, mm: recess and plug are equal if theirs differ by two diameters of the bit. Undefined without an inlay. Source: geometry. */
export function otherBushingMm(
  line: BushingLine,
  bushingDiameterMm: number,
  bitDiameterMm: number,
): number | undefined {
  switch (line) {
    case "recess":
      return bushingDiameterMm - 2 * bitDiameterMm;
    case "plug":
      return bushingDiameterMm + 2 * bitDiameterMm;
    default:
      return undefined;
  }
}

/** A bushing must be larger than this, mm, for the bit to turn free in it. */
export function leastBushingMm(bitDiameterMm: number): number {
  return bitDiameterMm + LEAST_ROOM_MM;
}

/** Whether a bit turns inside a bushing without touching it. */
export function turnsFree(bushingDiameterMm: number, bitDiameterMm: number): boolean {
  return bushingDiameterMm > leastBushingMm(bitDiameterMm);
}
