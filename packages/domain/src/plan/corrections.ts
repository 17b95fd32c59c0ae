import { DomainError, type Fault } from "../quantity/fault.ts";
import type { TestPiece } from "./test-piece.ts";

/** The setting a test piece was cut at. */
export type MadeSetting = { readonly heightMm: number; readonly fenceMm: number };

/** A new setting, and how far each part of it moves: 0 if it was right, undefined if it was not measured. */
export type SettingCorrection = MadeSetting & {
  /** Farther out of the table or base if above 0. */
  readonly heightChangeMm: number | undefined;
  /** The fence farther back from the work, so that more of the bit shows, if above 0. */
  readonly fenceBackMm: number | undefined;
};

/** A test piece that is farther off was not cut at the setting of the plan, mm. Ours. */
const MOST_OFF_MM = 3;

/**
 * The height and fence in mm that put right what was measured on a test piece: a cut that is 0.3 mm too shallow takes a bit 0.3 mm
 * higher, one that is 0.3 mm too narrow a fence 0.3 mm farther back (geometry). Throws a DomainError if nothing was measured, if the
 * plan does not ask for it, or if it is off by more than 3 mm.
 * @example
 * const setting = { heightMm: 12.3, fenceMm: 2 };
 * correctedSetting(setting, { depthMm: 6, widthMm: 8 }, { depthMm: 5.7 }) // → { heightMm: 12.6, fenceMm: 2, heightChangeMm: 0.3 }
 */
export function correctedSetting(
  { heightMm, fenceMm }: MadeSetting,
  wanted: TestPiece,
  measured: TestPiece,
): SettingCorrection {
  const faults = [
    ...measureFaults("/depthMm", wanted.depthMm, measured.depthMm),
    ...measureFaults("/widthMm", wanted.widthMm, measured.widthMm),
  ];
  if (measured.depthMm === undefined && measured.widthMm === undefined) {
    faults.push({ pointer: "", code: "nothing-measured", values: {} });
  }
  if (faults.length > 0) throw new DomainError(faults);
  const heightChangeMm = shortMm(wanted.depthMm, measured.depthMm);
  const fenceBackMm = shortMm(wanted.widthMm, measured.widthMm);
  return {
    heightMm: heightMm + (heightChangeMm ?? 0),
    fenceMm: fenceMm - (fenceBackMm ?? 0),
    heightChangeMm,
    fenceBackMm,
  };
}

function shortMm(wantedMm: number | undefined, measuredMm: number | undefined): number | undefined {
  return wantedMm === undefined || measuredMm === undefined ? undefined : wantedMm - measuredMm;
}

function measureFaults(
  pointer: string,
  wantedMm: number | undefined,
  measuredMm: number | undefined,
): Fault[] {
  if (measuredMm === undefined) return [];
  if (wantedMm === undefined) return [{ pointer, code: "not-measured-here", values: {} }];
  const min = Math.max(0, wantedMm - MOST_OFF_MM);
  const max = wantedMm + MOST_OFF_MM;
  if (measuredMm >= min && measuredMm <= max) return [];
  return [{ pointer, code: "out-of-range", values: { given: measuredMm, min, max } }];
}
