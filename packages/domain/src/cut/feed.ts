import { MM_PER_M } from "../quantity/units.ts";

/** The feed of one pass and the surface it leaves. */
export type Feed = {
  readonly feedMPerMin: number;
  readonly feedPerToothMm: number;
  /** Distance between the marks of the one tooth that leaves the finish. */
  readonly toothMarkPitchMm: number;
  /** Height of the waves between those marks. */
  readonly waveHeightMm: number;
};

/**
 * Feed in m/min from the advance per tooth: v_f = f_z·n·z, held to a hand's fastest. Run-out makes one tooth cut the
 * finished surface on a hand-run cutter, so the marks are one turn apart. Source: machining handbooks (standard).
 * @example
 * feedFor(0.1, 12_000, 2, 6.35, 6).feedMPerMin // → 2.4
 */
export function feedFor(
  feedPerToothMm: number,
  rpm: number,
  wings: number,
  cuttingRadiusMm: number,
  handFeedMaxMPerMin: number,
): Feed {
  const feedMPerMin = Math.min((feedPerToothMm * rpm * wings) / MM_PER_M, handFeedMaxMPerMin);
  const toothMarkPitchMm = (feedMPerMin * MM_PER_M) / rpm;
  return {
    feedMPerMin,
    feedPerToothMm: toothMarkPitchMm / wings,
    toothMarkPitchMm,
    waveHeightMm: waveHeightMm(toothMarkPitchMm, cuttingRadiusMm),
  };
}

/**
 * Height in mm of the waves a cutter of this radius leaves at this pitch: h = R − √(R² − (p/2)²), exact (geometry).
 * @example
 * waveHeightMm(0.2, 6.35) // → 0.000787
 */
export function waveHeightMm(pitchMm: number, radiusMm: number): number {
  const half = Math.min(pitchMm / 2, radiusMm);
  // The same as R − √(R² − half²), without losing digits to the subtraction.
  return (half * half) / (radiusMm + Math.sqrt(radiusMm * radiusMm - half * half));
}

/**
 * Seconds a hand takes along an edge in mm at this feed in m/min, above 0.
 * @example
 * secondsAlong(600, 2.4) // → 15.0
 */
export function secondsAlong(lengthMm: number, feedMPerMin: number): number {
  return (lengthMm / MM_PER_M / feedMPerMin) * 60;
}
