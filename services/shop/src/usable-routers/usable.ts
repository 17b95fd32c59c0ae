import {
  type Dial,
  type DialReading,
  isSameSize,
  type Mark,
  type Policy,
  type Router,
  routerFaults,
} from "@rimwise/domain";
import type { ColletRecord } from "../collets/schema.ts";
import type { ReadingRecord } from "../dial-readings/schema.ts";
import { daysAfter } from "../http/moment.ts";
import { bareRouter } from "../routers/bare.ts";
import type { RouterRecord } from "../routers/schema.ts";

/** What is kept of a router beside its own record. */
export type RouterParts = {
  /** Newest entry first. */
  readonly readings: readonly ReadingRecord[];
  readonly collets: readonly ColletRecord[];
};

type DatedReading = DialReading & { readonly readAt: string };

/**
 * A router as it can be used at a moment: with the readings that have not lapsed, the newest of each mark, and without the
 * sizes for which every collet is held or retired. When readings contradict each other the newer one stays.
 */
export function routerAsUsable(
  record: RouterRecord,
  { readings, collets }: RouterParts,
  at: string,
  policy: Policy,
): Router {
  const { dial, colletDiametersMm, ...plate } = bareRouter(record);
  const usable = usableCollets(colletDiametersMm, collets);
  return {
    ...plate,
    ...(dial && { dial: dialInForce(record, dial, readings, at, policy) }),
    ...(usable && { colletDiametersMm: usable }),
  };
}

/** Sizes a collet can be clamped with; undefined when nobody said, empty when none is fit. */
function usableCollets(
  listed: readonly number[] | undefined,
  collets: readonly ColletRecord[],
): readonly number[] | undefined {
  if (collets.length === 0) return listed;
  const fit = collets.filter(({ condition }) => condition === "good" || condition === "worn");
  const unkept = (listed ?? []).filter((mm) => !collets.some((collet) => isSameSize(collet.diameterMm, mm)));
  const sizes = [...unkept, ...fit.map(({ diameterMm }) => diameterMm)];
  return [...new Set(sizes)].sort((a, b) => a - b);
}

/** Until when the readings in force at a moment all still count; undefined when there are none. */
export function readingsCountUntil(
  record: RouterRecord,
  { readings }: Pick<RouterParts, "readings">,
  at: string,
  policy: Policy,
): string | undefined {
  const { dial } = bareRouter(record);
  const dates =
    dial === undefined ? [] : readingsInForce(record, dial, readings, at, policy).map(({ readAt }) => readAt);
  const [oldest] = dates.sort();
  return oldest && daysAfter(oldest, policy.dialReadingMaxAgeDays);
}

function dialInForce(
  record: RouterRecord,
  { readings: own = [], ...dial }: Dial,
  kept: readonly ReadingRecord[],
  at: string,
  policy: Policy,
): Dial {
  const inForce = readingsInForce(record, { ...dial, readings: own }, kept, at, policy);
  return inForce.length > 0 ? { ...dial, readings: inForce.map(({ mark, rpm }) => ({ mark, rpm })) } : dial;
}

function readingsInForce(
  { dialReadAt }: RouterRecord,
  { readings: own = [], ...dial }: Dial,
  kept: readonly ReadingRecord[],
  at: string,
  policy: Policy,
): readonly DatedReading[] {
  const oldest = daysAfter(at, -policy.dialReadingMaxAgeDays);
  // Of two at the same moment the one that was entered later comes first, and stays there.
  const dated: DatedReading[] = [
    ...kept.map(({ mark, rpm, readAt }) => ({ mark, rpm, readAt })),
    ...own.map((reading) => ({ ...reading, readAt: dialReadAt ?? "" })),
  ];
  const newestFirst = dated
    .filter(({ readAt }) => readAt >= oldest)
    .sort((a, b) => (a.readAt < b.readAt ? 1 : a.readAt > b.readAt ? -1 : 0));
  let inForce: readonly DatedReading[] = [];
  for (const reading of newestFirst) {
    const withThis = [...inForce, reading].sort((a, b) => inOrder(a.mark, b.mark));
    if (isSound({ ...dial, readings: withThis })) inForce = withThis;
  }
  return inForce;
}

/** A plate that contradicts nothing, so that only what the dial says of itself is judged. */
const ANY_PLATE = { minRpm: 1000, maxRpm: 60_000 };

function isSound(dial: Dial): boolean {
  return routerFaults({ ...ANY_PLATE, dial }).length === 0;
}

function inOrder(one: Mark, other: Mark): number {
  if (typeof one === "number" && typeof other === "number") return one - other;
  return String(one).toUpperCase() < String(other).toUpperCase() ? -1 : 1;
}
