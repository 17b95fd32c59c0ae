import { DomainError, type Fault } from "../quantity/fault.ts";
import type { TestPiece } from "./test-piece.ts";

/** The setting a test piece was cut at, as a pass says it. */
export type MadeSetting = {
  readonly heightMm: number;
  /** How much of that is its cutter; absent if it was not said: a plan of an older version. */
  readonly cutterMm?: number;
  readonly fenceMm: number;
  /** How many runs side by side, of a cut that is wider than the bit: the fence is the last one's. */
  readonly runs?: number;
  /** Of a groove that is wider than the bit: how far its last run lies over from the first. */
  readonly lastRunOverMm?: number;
};

/** A new setting, and how far each part of it moves: 0 if it was right, undefined if it was not measured. */
export type SettingCorrection = MadeSetting & {
  /** Farther out of the table or base if above 0. */
  readonly heightChangeMm: number | undefined;
  /** Wider if above 0: the fence farther back from the work, so that more of the bit shows, or the last run farther over. */
  readonly widthChangeMm: number | undefined;
};

/** A test piece that is farther off was not cut at the setting of the plan, mm. Ours. */
const MOST_OFF_MM = 3;

/**
 * The height and fence in mm that put right what was measured on a test piece: a cut that is 0.3 mm too shallow takes a bit 0.3 mm
 * higher, one that is 0.3 mm too narrow a fence 0.3 mm farther back, or a last run 0.3 mm farther over while the first ones stay
 * (geometry). Throws a DomainError if nothing was measured, if the plan does not ask for it, or if it is off by more than 3 mm.
 * @example
 * const setting = { heightMm: 12.3, fenceMm: 2 };
 * correctedSetting(setting, { depthMm: 6, widthMm: 8 }, { depthMm: 5.7 }) // → { heightMm: 12.6, fenceMm: 2, heightChangeMm: 0.3 }
 */
export function correctedSetting(
  made: MadeSetting,
  wanted: TestPiece,
  measured: TestPiece,
): SettingCorrection {
  const { heightMm, cutterMm, fenceMm, runs, lastRunOverMm } = made;
  const faults = [
    ...measureFaults("/depthMm", wanted.depthMm, measured.depthMm),
    // A groove is no narrower than its first run.
    ...measureFaults("/widthMm", wanted.widthMm, measured.widthMm, lastRunOverMm),
  ];
  if (measured.depthMm === undefined && measured.widthMm === undefined) {
    faults.push({ pointer: "", code: "nothing-measured", values: {} });
  }
  if (faults.length > 0) throw new DomainError(faults);
  const heightChangeMm = shortMm(wanted.depthMm, measured.depthMm);
  const widthChangeMm = shortMm(wanted.widthMm, measured.widthMm);
  const isByRun = lastRunOverMm !== undefined;
  return {
    heightMm: heightMm + (heightChangeMm ?? 0),
    ...(cutterMm !== undefined && { cutterMm: cutterMm + (heightChangeMm ?? 0) }),
    fenceMm: isByRun ? fenceMm : fenceMm - (widthChangeMm ?? 0),
    ...(runs !== undefined && { runs }),
    ...(isByRun && { lastRunOverMm: lastRunOverMm + (widthChangeMm ?? 0) }),
    heightChangeMm,
    widthChangeMm,
  };
}

function shortMm(wantedMm: number | undefined, measuredMm: number | undefined): number | undefined {
  return wantedMm === undefined || measuredMm === undefined ? undefined : wantedMm - measuredMm;
}

function measureFaults(
  pointer: string,
  wantedMm: number | undefined,
  measuredMm: number | undefined,
  lessAtMostMm = MOST_OFF_MM,
): Fault[] {
  if (measuredMm === undefined) return [];
  if (wantedMm === undefined) return [{ pointer, code: "not-measured-here", values: {} }];
  const min = Math.max(0, wantedMm - MOST_OFF_MM);
  const max = wantedMm + Math.min(MOST_OFF_MM, lessAtMostMm);
  if (measuredMm >= min && measuredMm <= max) return [];
  return [{ pointer, code: "out-of-range", values: { given: measuredMm, min, max } }];
}
