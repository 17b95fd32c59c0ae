import type { Policy } from "../policy/policy.ts";
import { markAt, markPosition } from "./mark.ts";
import { weighReadings } from "./reading.ts";
import type { Dial, DialReading, Mark, Router } from "./router.ts";

/** What a speed at one dial position rests on. */
export type SpeedBasis = "reading" | "between-readings" | "range" | "single-speed" | "no-dial";

/** The speed at one setting of a router. */
export type DialSpeed = {
  /** The mark to turn to; undefined if there is no dial. */
  readonly mark: Mark | undefined;
  /** Nominal speed. */
  readonly rpm: number;
  /** The fastest it may actually run there, by the tolerance of what it rests on. */
  readonly rpmHighest: number;
  readonly basis: SpeedBasis;
};

/** If nothing is said of detents, only the printed marks are relied on. */
const WHOLE_MARKS = 1;

/** Finest part of a mark a person can set on a stepless dial. Ours. */
const STEPLESS_STEPS_PER_MARK = 10;

/** Above this many marks a stepless dial is set to whole marks only. Ours. */
const LONG_DIAL_MARKS = 20;

/** A reading that is not believed yet, and the speed that counts at its mark until a second one agrees. */
export type DoubtedReading = DialReading & { readonly countsRpm: number };

type Knot = { readonly position: number; readonly rpm: number; readonly isReading: boolean };

/**
 * Every setting of a router, slowest mark first. Speeds run straight from knot to knot: the tachometer
 * readings, and the ends of the speed range if no reading contradicts them. A reading that is believed beats the range; of one
 * that is doubted and what the rest gives, the faster counts. What is not measured carries the larger tolerance of the policy.
 * @example
 * const router = { minRpm: 10_000, maxRpm: 20_000, dial: { marks: { first: 1, last: 5 } } };
 * dialSpeeds(router, DEFAULT_POLICY)[1] // → { mark: 2, rpm: 12_500, rpmHighest: 13_750, basis: "range" }
 */
export function dialSpeeds(router: Router, policy: Policy): DialSpeed[] {
  const { dial, maxRpm } = router;
  if (dial === undefined) {
    const { minRpm } = router;
    const most = 1 + policy.dialRangeToleranceRatio;
    const fastest = { mark: undefined, rpm: maxRpm, rpmHighest: maxRpm * most };
    if (minRpm === maxRpm) return [{ ...fastest, basis: "single-speed" }];
    // Without a dial described, a variable router can be turned down all the way, and nothing says what lies between.
    const slowest = { mark: undefined, rpm: minRpm, rpmHighest: minRpm * most };
    return [
      { ...slowest, basis: "no-dial" },
      { ...fastest, basis: "no-dial" },
    ];
  }
  const knots = dialKnots(router, dial);
  return dialPositions(dial).map((position) => speedAt(knots, position, dial, policy));
}

/**
 * The readings of a router's dial that are not believed yet, each with the speed that counts at its mark.
 * @example
 * const dial = { marks: { first: 1, last: 5 }, readings: [{ mark: 1, rpm: 1100, isConfirmed: true }] };
 * doubtedReadings({ minRpm: 23_000, maxRpm: 30_000, dial })[0].countsRpm // → 23_000
 */
export function doubtedReadings(router: Router): DoubtedReading[] {
  const { dial } = router;
  if (dial === undefined) return [];
  const knots = dialKnots(router, dial);
  return weighReadings(router, dial).doubted.map((reading) => ({
    ...reading,
    countsRpm: between(knots, markPosition(reading.mark)).rpm,
  }));
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
  const { believed, doubted } = weighReadings(router, dial);
  const known = withEnds(
    believed.map(({ mark, rpm }) => ({ position: markPosition(mark), rpm, isReading: true })),
    router,
    dial,
  );
  const faster = doubted
    .map(({ mark, rpm }) => ({ position: markPosition(mark), rpm, isReading: false }))
    .filter(({ position, rpm }) => rpm > between(known, position).rpm);
  return faster.length === 0 ? known : withEnds([...known, ...faster], router, dial);
}

/** Knots in rising order of mark and of speed, one at each, from the dial's first mark to its last. */
function withEnds(given: readonly Knot[], router: Router, dial: Dial): Knot[] {
  const first = markPosition(dial.marks.first);
  const last = markPosition(dial.marks.last);
  const knots: Knot[] = [];
  for (const knot of [...given].sort((one, other) => one.position - other.position)) {
    const before = knots.at(-1);
    if (before?.position === knot.position) {
      if (knot.rpm > before.rpm) knots[knots.length - 1] = knot;
      continue;
    }
    // A dial rises: no mark is slower than one below it.
    const isSlower = before !== undefined && knot.rpm < before.rpm;
    knots.push(isSlower ? { ...knot, rpm: before.rpm, isReading: false } : knot);
  }
  const slowest = knots[0];
  const fastest = knots.at(-1);
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
  const { rpm, lower, upper } = between(knots, position);
  if (lower === upper) {
    const tolerance = upper.isReading ? policy.dialReadToleranceRatio : policy.dialRangeToleranceRatio;
    return { mark, rpm, rpmHighest: rpm * (1 + tolerance), basis: upper.isReading ? "reading" : "range" };
  }
  if (!lower.isReading || !upper.isReading) {
    return { mark, rpm, rpmHighest: rpm * (1 + policy.dialRangeToleranceRatio), basis: "range" };
  }
  // A dial rises, so no mark below a reading runs faster than that reading.
  const readHighest = upper.rpm * (1 + policy.dialReadToleranceRatio);
  const rpmHighest = Math.max(rpm, Math.min(rpm * (1 + policy.dialBetweenToleranceRatio), readHighest));
  return { mark, rpm, rpmHighest, basis: "between-readings" };
}

/** The knots about a position, and the speed straight between them. At a knot both are that one. */
function between(
  knots: readonly Knot[],
  position: number,
): { readonly rpm: number; readonly lower: Knot; readonly upper: Knot } {
  const upperIndex = knots.findIndex((knot) => knot.position >= position);
  const upper = knots[upperIndex];
  const lower = knots[upperIndex - 1];
  if (upper?.position === position) return { rpm: upper.rpm, lower: upper, upper };
  if (upper === undefined || lower === undefined) {
    throw new Error(`dial position ${position} lies off the dial`);
  }
  const along = (position - lower.position) / (upper.position - lower.position);
  return { rpm: lower.rpm + (upper.rpm - lower.rpm) * along, lower, upper };
}
