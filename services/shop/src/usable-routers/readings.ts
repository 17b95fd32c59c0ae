import {
  believableRpm,
  type Dial,
  type DialReading,
  type Mark,
  markPosition,
  type Policy,
  readingsAgree,
  readingsContradict,
  type UnusedReading,
} from "@rimwise/domain";
import type { ReadingRecord } from "../dial-readings/schema.ts";
import { daysAfter } from "../http/moment.ts";
import { bareRouter } from "../routers/bare.ts";
import type { RouterRecord } from "../routers/schema.ts";

type DatedReading = DialReading & { readonly readAt: string };

/** The readings of a dial at a moment. */
type Sorted = {
  /** Each contradicts no other. */
  readonly fitting: readonly DatedReading[];
  /** Each counts only if it is the faster. */
  readonly doubted: readonly DatedReading[];
  readonly unused: readonly UnusedReading[];
};

/** A dial at a moment with the readings that count, and those that do not and why. `kept` is newest entry first. */
export function dialInForce(
  record: RouterRecord,
  { readings: _own, ...dial }: Dial,
  kept: readonly ReadingRecord[],
  at: string,
  policy: Policy,
): Dial {
  const { fitting, doubted, unused } = sortedReadings(record, kept, at, policy);
  const readings = [...fitting, ...doubted].sort((a, b) => inOrder(a.mark, b.mark));
  return {
    ...dial,
    ...(readings.length > 0 && { readings: readings.map(({ readAt: _when, ...reading }) => reading) }),
    ...(unused.length > 0 && { unusedReadings: unused }),
  };
}

/** Until when the readings in force at a moment all still count; undefined when there are none. */
export function readingsCountUntil(
  record: RouterRecord,
  kept: readonly ReadingRecord[],
  at: string,
  policy: Policy,
): string | undefined {
  const { fitting, doubted } = sortedReadings(record, kept, at, policy);
  const [oldest] = [...fitting, ...doubted].map(({ readAt }) => readAt).sort();
  return oldest && daysAfter(oldest, policy.dialReadingMaxAgeDays);
}

/** What the current readings say of a new one. */
export type Held = {
  /** Another reading of the mark agrees. */
  readonly isBacked: boolean;
  /** The reading nearest to its mark that it contradicts; undefined if it fits all. */
  readonly against: DialReading | undefined;
};

/** Holds a new reading against those that are current. */
export function heldAgainst(
  reading: DialReading,
  record: RouterRecord,
  kept: readonly ReadingRecord[],
  at: string,
  policy: Policy,
): Held {
  const { fitting, doubted } = sortedReadings(record, kept, at, policy);
  const distance = ({ mark }: DialReading) => Math.abs(markPosition(mark) - markPosition(reading.mark));
  const contradicted = fitting.filter((other) => readingsContradict(other, reading));
  return {
    isBacked: [...fitting, ...doubted].some((other) => readingsAgree(other, reading)),
    against: contradicted.sort((one, other) => distance(one) - distance(other))[0],
  };
}

/**
 * Readings that were taken twice come before those that were taken once, and newer ones before older. One that contradicts what
 * came before it is left out if it is the older, and doubted if it is the newer. One that was taken once is doubted too if it was
 * confirmed or does not fit the plate as it is now.
 */
function sortedReadings(
  record: RouterRecord,
  kept: readonly ReadingRecord[],
  at: string,
  policy: Policy,
): Sorted {
  const { dial } = bareRouter(record);
  if (dial === undefined) return { fitting: [], doubted: [], unused: [] };
  const all = newestFirst(record, dial, kept);
  const oldest = daysAfter(at, -policy.dialReadingMaxAgeDays);
  const onDial = all.filter(({ mark }) => isOnDial(dial, mark));
  const current = onDial.filter(({ readAt }) => readAt >= oldest);
  const { min, max } = believableRpm(record);
  const isTwice = (reading: DatedReading) =>
    current.some((other) => other !== reading && readingsAgree(other, reading));
  const isLikely = ({ rpm, isConfirmed }: DatedReading) => isConfirmed !== true && rpm >= min && rpm <= max;
  const isNewer = (one: DatedReading, other: DatedReading) => current.indexOf(one) < current.indexOf(other);
  const twice = current.filter(isTwice);
  const once = current.filter((reading) => !isTwice(reading));

  const fitting: DatedReading[] = [];
  const doubted = once.filter((reading) => !isLikely(reading));
  const contradicted: DatedReading[] = [];
  for (const reading of [...twice, ...once.filter(isLikely)]) {
    const against = fitting.filter((other) => readingsContradict(other, reading));
    if (against.length === 0) fitting.push(reading);
    else if (against.every((other) => isNewer(reading, other))) doubted.push(reading);
    else contradicted.push(reading);
  }
  const marksRead = new Set(current.map(({ mark }) => markPosition(mark)));
  const lapsed = onDial.filter(({ mark, readAt }) => readAt < oldest && !marksRead.has(markPosition(mark)));
  return {
    fitting: fitting.map((reading) => (isLikely(reading) ? reading : confirmed(reading))),
    doubted: doubted.map(confirmed),
    unused: [
      ...contradicted.map(leftOut("contradicted")),
      ...newestOfEachMark(lapsed).map(leftOut("lapsed")),
      ...newestOfEachMark(all.filter((each) => !onDial.includes(each))).map(leftOut("off-dial")),
    ],
  };
}

/** What is kept was accepted when it was entered, so it is not refused now. */
function confirmed(reading: DatedReading): DatedReading {
  return { ...reading, isConfirmed: true };
}

/** Of two at the same moment the one that was entered later comes first. */
function newestFirst(
  { dialReadAt = "" }: RouterRecord,
  { readings: own = [] }: Dial,
  kept: readonly ReadingRecord[],
): DatedReading[] {
  const dated: DatedReading[] = [
    ...kept.map(({ mark, rpm, readAt, isConfirmed }) => ({
      mark,
      rpm,
      readAt,
      ...(isConfirmed !== undefined && { isConfirmed }),
    })),
    ...own.map((reading) => ({ ...reading, readAt: dialReadAt })),
  ];
  return dated.sort((a, b) => (a.readAt < b.readAt ? 1 : a.readAt > b.readAt ? -1 : 0));
}

function newestOfEachMark(newestFirst: readonly DatedReading[]): DatedReading[] {
  return newestFirst.filter(
    ({ mark }, index) => newestFirst.findIndex((other) => isSameMark(other.mark, mark)) === index,
  );
}

function isOnDial({ marks: { first, last } }: Dial, mark: Mark): boolean {
  const position = markPosition(mark);
  return typeof mark === typeof first && position >= markPosition(first) && position <= markPosition(last);
}

function leftOut(reason: UnusedReading["reason"]): (reading: DialReading) => UnusedReading {
  return ({ mark, rpm }) => ({ mark, rpm, reason });
}

function isSameMark(one: Mark, other: Mark): boolean {
  return typeof one === typeof other && markPosition(one) === markPosition(other);
}

function inOrder(one: Mark, other: Mark): number {
  return markPosition(one) - markPosition(other);
}
