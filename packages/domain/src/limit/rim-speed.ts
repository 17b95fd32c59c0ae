import { MM_PER_M, SECONDS_PER_MINUTE } from "../quantity/units.ts";
import { defineLimit } from "./limit.ts";

/**
 * Speed in m/s of a point on a circle `diameterMm` across at `rpm`: v = π·D·n (geometry).
 * @example
 * rimSpeedMPerS(88.9, 12_000) // → 55.858
 */
export function rimSpeedMPerS(diameterMm: number, rpm: number): number {
  return (Math.PI * diameterMm * rpm) / (MM_PER_M * SECONDS_PER_MINUTE);
}

/**
 * The speed in rpm at which a point on a circle `diameterMm` across, above 0, reaches `speedMPerS`: n = v/(π·D) (geometry).
 * @example
 * rpmAtRimSpeed(88.9, 56) // → 12_030.6
 */
export function rpmAtRimSpeed(diameterMm: number, speedMPerS: number): number {
  return (speedMPerS * MM_PER_M * SECONDS_PER_MINUTE) / (Math.PI * diameterMm);
}

/** The rim against the shop's fastest rim speed. */
export const rimSpeed = defineLimit({
  name: "rim-speed",
  strength: "hard",
  formula: "n = v / (π·D)",
  source: "geometry; the speed allowed is the shop's policy (default 56 m/s, common practice)",
  figure: ({ solid, policy: { rimSpeedMaxMPerS } }) => {
    const diameterMm = 2 * solid.rimRadiusMm;
    return { rpm: rpmAtRimSpeed(diameterMm, rimSpeedMaxMPerS), values: { diameterMm, rimSpeedMaxMPerS } };
  },
  raisedBy: () => ({ code: "smaller-bit" }),
});
