import { DIAL_RULES } from "../policy/rules/dial.ts";
import { markPosition } from "./mark.ts";
import { type Dial, type DialReading, ROUTER_RANGES, type Router } from "./router.ts";

/**
 * How far a true speed may be from the plate's, as a ratio. The default of the policy, whatever a shop tightens: that assumes
 * more for safety, and makes no slip of the pen plausible.
 */
const PLATE_TOLERANCE_RATIO = DIAL_RULES.dialRangeToleranceRatio.default;

/** Two readings of one mark this close agree, as a ratio of the faster. */
const AGREEMENT_RATIO = DIAL_RULES.dialReadToleranceRatio.default;

/** The readings of a dial by how far they are believed. */
export type WeighedReadings = {
  /** Near what the plate gives or faster, or read twice: each counts as it is. */
  readonly believed: readonly DialReading[];
  /** Each counts only if it is the faster, until a second reading of its mark agrees. */
  readonly doubted: readonly DialReading[];
};

/**
 * The speeds, rpm, that a router can be believed to have been read at: its range and the plate's tolerance on both sides.
 * @example
 * believableRpm({ minRpm: 23_000, maxRpm: 30_000 }) // → { min: 20_700, max: 33_000 }
 */
export function believableRpm({ minRpm, maxRpm }: Router): { readonly min: number; readonly max: number } {
  return {
    min: Math.max(ROUTER_RANGES.rpm.min, Math.ceil(minRpm * (1 - PLATE_TOLERANCE_RATIO))),
    max: Math.min(ROUTER_RANGES.rpm.max, Math.round(maxRpm * (1 + PLATE_TOLERANCE_RATIO))),
  };
}

/**
 * Whether two readings are of one mark and of one speed, as near as a mark can be set again.
 * @example
 * readingsAgree({ mark: 2, rpm: 11_800 }, { mark: 2, rpm: 11_900 }) // → true
 */
export function readingsAgree(one: DialReading, other: DialReading): boolean {
  return (
    markPosition(one.mark) === markPosition(other.mark) &&
    Math.abs(one.rpm - other.rpm) <= AGREEMENT_RATIO * Math.max(one.rpm, other.rpm)
  );
}

/**
 * Whether two readings cannot both be right: a dial has one speed at a mark, and turns faster at a higher one.
 * @example
 * readingsContradict({ mark: 2, rpm: 11_800 }, { mark: 3, rpm: 11_000 }) // → true
 */
export function readingsContradict(one: DialReading, other: DialReading): boolean {
  const apart = markPosition(other.mark) - markPosition(one.mark);
  if (apart === 0) return !readingsAgree(one, other);
  return apart > 0 ? other.rpm <= one.rpm : one.rpm <= other.rpm;
}

/**
 * Which readings of a dial are believed as they are. One that somebody had to confirm, and one that is slower than the plate's
 * line by more than its tolerance, are doubted until a second reading of the mark agrees.
 */
export function weighReadings(router: Router, dial: Dial): WeighedReadings {
  const { readings = [] } = dial;
  const isBelieved = (reading: DialReading) =>
    readings.some((other) => other !== reading && readingsAgree(other, reading)) ||
    (reading.isConfirmed !== true &&
      reading.rpm >= plateRpmAt(router, dial, reading) * (1 - PLATE_TOLERANCE_RATIO));
  return {
    believed: readings.filter(isBelieved),
    doubted: readings.filter((reading) => !isBelieved(reading)),
  };
}

/** The speed that the plate alone gives a mark: straight from its slowest to its fastest. */
function plateRpmAt({ minRpm, maxRpm }: Router, { marks }: Dial, { mark }: DialReading): number {
  const first = markPosition(marks.first);
  const along = (markPosition(mark) - first) / (markPosition(marks.last) - first);
  return minRpm + (maxRpm - minRpm) * along;
}
