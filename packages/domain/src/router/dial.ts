import type { Policy } from "../policy/policy.ts";
import { markAt, markPosition } from "./mark.ts";
import type { Dial, Mark, Router } from "./router.ts";

/** What a speed at one dial position rests on. */
export type SpeedBasis = "reading" | "between-readings" | "range" | "single-speed" | "no-dial";

/** The speed at one setting of a router. */
export type DialSpeed = {
  /** The mark to turn to; undefined if there is no dial. */
  readonly mark: Mark | undefined;
  /** Nominal speed. */
  readonly rpm: number;
  /** The fastest it may truly run there, by the tolerance of what it rests on. */
  readonly rpmHighest: number;
  readonly basis: SpeedBasis;
};

/** If nothing is said of detents, only the printed marks are relied on. */
const WHOLE_MARKS = 1;

/** Finest part of a mark a person can set on a stepless dial. Ours. */
const STEPLESS_STEPS_PER_MARK = 10;

/** Above this many marks a stepless dial is set to whole marks only. Ours. */
const LONG_DIAL_MARKS = 20;

type Knot = { readonly position: number; readonly rpm: number; readonly isReading: boolean };

/**
 * Every setting of a router, slowest mark first. Speeds run straight from knot to knot: the tachometer
 * readings, and the ends of the speed range if no reading contradicts them. A reading beats the range, and what is
 * not measured carries the larger tolerance of the policy.
 * @example
 * const router = { minRpm: 10_000, maxRpm: 20_000, dial: { marks: { first: 1, last: 5 } } };
 * dialSpeeds(router, DEFAULT_POLICY)[1] // → { mark: 2, rpm: 12_500, rpmHighest: 13_750, basis: "range" }
 */
export function dialSpeeds(router: Router, policy: Policy): DialSpeed[] {
  const { dial, maxRpm } = router;
  if (dial === undefined) {
    // Without a dial described, nothing says how to hold a variable router below its fastest.
    const basis = router.minRpm === maxRpm ? "single-speed" : "no-dial";
    return [
      { mark: undefined, rpm: maxRpm, rpmHighest: maxRpm * (1 + policy.dialRangeToleranceRatio), basis },
    ];
  }
  const knots = dialKnots(router, dial);
  return dialPositions(dial).map((position) => speedAt(knots, position, dial, policy));
}

/** The positions a person can turn the dial to, in rising order. */
function dialPositions(dial: Dial): number[] {
  const first = markPosition(dial.marks.first);
  const last = markPosition(dial.marks.last);
  const { steps = WHOLE_MARKS } = dial;
  const perMark = steps > 0 ? steps : last - first > LONG_DIAL_MARKS ? 1 : STEPLESS_STEPS_PER_MARK;
  const count = Math.floor((last - first) * perMark + 1e-9);
  const positions: number[] = [];
  for (let index = 0; index <= count; index += 1) positions.push((first * perMark + index) / perMark);
  return positions;
}

function dialKnots(router: Router, dial: Dial): Knot[] {
  const first = markPosition(dial.marks.first);
  const last = markPosition(dial.marks.last);
  const readings = (dial.readings ?? []).map(({ mark, rpm }) => ({
    position: markPosition(mark),
    rpm,
    isReading: true,
  }));
  const slowest = readings[0];
  const fastest = readings.at(-1);
  const knots: Knot[] = [...readings];
  // If a reading contradicts the plate, the reading's own speed bounds the marks beyond it.
  if (slowest === undefined || slowest.position > first) {
    knots.unshift({
      position: first,
      rpm: Math.min(router.minRpm, slowest?.rpm ?? router.minRpm),
      isReading: false,
    });
  }
  if (fastest === undefined || fastest.position < last) {
    knots.push({
      position: last,
      rpm: Math.max(router.maxRpm, fastest?.rpm ?? router.maxRpm),
      isReading: false,
    });
  }
  return knots;
}

function speedAt(knots: readonly Knot[], position: number, dial: Dial, policy: Policy): DialSpeed {
  const mark = markAt(position, dial.marks.first);
  const upperIndex = knots.findIndex((knot) => knot.position >= position);
  const upper = knots[upperIndex];
  const lower = knots[upperIndex - 1];
  if (upper === undefined || (lower === undefined && upper.position !== position)) {
    throw new Error(`dial position ${position} lies off the dial`);
  }
  if (upper.position === position || lower === undefined) {
    const tolerance = upper.isReading ? policy.dialReadToleranceRatio : policy.dialRangeToleranceRatio;
    const basis = upper.isReading ? "reading" : "range";
    return { mark, rpm: upper.rpm, rpmHighest: upper.rpm * (1 + tolerance), basis };
  }
  const along = (position - lower.position) / (upper.position - lower.position);
  const rpm = lower.rpm + (upper.rpm - lower.rpm) * along;
  if (!lower.isReading || !upper.isReading) {
    return { mark, rpm, rpmHighest: rpm * (1 + policy.dialRangeToleranceRatio), basis: "range" };
  }
  // A dial rises, so no mark below a reading runs faster than that reading.
  const readHighest = upper.rpm * (1 + policy.dialReadToleranceRatio);
  const rpmHighest = Math.max(rpm, Math.min(rpm * (1 + policy.dialBetweenToleranceRatio), readHighest));
  return { mark, rpm, rpmHighest, basis: "between-readings" };
}
