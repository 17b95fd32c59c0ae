import type { Fault } from "../../quantity/fault.ts";

/** Two figures of one bit that should be the same may differ by this, mm: both were measured. */
export const MEASURED_SLACK_MM = 0.05;

/** What is cut away of the radius may take this much of it: the rest is the neck that holds the edge. Ours. */
const NECK_TAKES_AT_MOST = 0.8;

/** No bit of the trade cuts longer than this, mm. Source: common practice. */
const LONGEST_PROFILE_MM = 120;

/** A fault if a dimension is not smaller than what it must fit inside. */
export function mustStayUnder(pointer: string, given: number, below: number): Fault[] {
  return given < below ? [] : [{ pointer, code: "out-of-range", values: { given, below } }];
}

/** A fault if a dimension is greater than what it must fit inside. */
export function mustNotPass(pointer: string, given: number, max: number): Fault[] {
  return given <= max ? [] : [{ pointer, code: "out-of-range", values: { given, max } }];
}

/** A fault if a hollow of this depth would leave no neck to hold the bit together. */
export function mustLeaveNeck(pointer: string, depthMm: number, diameterMm: number): Fault[] {
  return mustNotPass(pointer, depthMm, NECK_TAKES_AT_MOST * (diameterMm / 2));
}

/** A fault if an edge at this angle to the axis would have to be longer than any bit to get `widthMm` out. */
export function slopeFaults(pointer: string, givenDeg: number, slopeDeg: number, widthMm: number): Fault[] {
  const leastDeg = (Math.atan(widthMm / LONGEST_PROFILE_MM) * 180) / Math.PI;
  if (slopeDeg >= leastDeg) return [];
  return [
    { pointer, code: "out-of-range", values: { given: givenDeg, min: (givenDeg / slopeDeg) * leastDeg } },
  ];
}
