import {
  DEFAULT_POLICY,
  type Dial,
  type DialReading,
  type Mark,
  type Policy,
  type Router,
  routerFaults,
} from "@rimwise/domain";
import type { ColletRecord } from "../collets/schema.ts";
import type { ReadingRecord } from "../dial-readings/schema.ts";
import { bareRouter } from "./bare.ts";
import type { RouterRecord } from "./schema.ts";

/** What is kept of a router beside its own record. */
export type RouterParts = {
  readonly readings: readonly ReadingRecord[];
  readonly collets: readonly ColletRecord[];
};

type DatedReading = DialReading & { readonly readAt: string };

const DAY_MS = 24 * 60 * 60 * 1000;

/** Diameters this close are one size of collet, mm. */
const SAME_SIZE_MM = 0.1;

/**
 * A router as it can be used at a moment: with the readings that have not lapsed, the newest of each mark, and without the
 * sizes for which every collet is held or retired. Where readings contradict each other the newer one stays.
 */
export function usableRouter(
  record: RouterRecord,
  { readings, collets }: RouterParts,
  at: string,
  policy: Policy = DEFAULT_POLICY,
): Router {
  const { dial, colletDiametersMm, ...plate } = bareRouter(record);
  const usable = usableCollets(colletDiametersMm, collets);
  return {
    ...plate,
    ...(dial && { dial: dialInForce(record, dial, readings, at, policy) }),
    ...(usable && { colletDiametersMm: usable }),
  };
}

/** Sizes a collet can be clamped with; undefined where nobody said, empty where none is fit. */
function usableCollets(
  listed: readonly number[] | undefined,
  collets: readonly ColletRecord[],
): readonly number[] | undefined {
  if (collets.length === 0) return listed;
  const fit = collets.filter(({ condition }) => condition === "good" || condition === "worn");
  const unkept = (listed ?? []).filter((mm) => !collets.some((collet) => isSize(collet.diameterMm, mm)));
  const sizes = [...unkept, ...fit.map(({ diameterMm }) => diameterMm)];
  return [...new Set(sizes)].sort((a, b) => a - b);
}

function dialInForce(
  { dialReadAt }: RouterRecord,
  { readings: own = [], ...dial }: Dial,
  kept: readonly ReadingRecord[],
  at: string,
  policy: Policy,
): Dial {
  const oldest = new Date(new Date(at).getTime() - policy.dialReadingMaxAgeDays * DAY_MS).toISOString();
  const dated: DatedReading[] = [
    ...own.map((reading) => ({ ...reading, readAt: dialReadAt ?? "" })),
    ...kept.map(({ mark, rpm, readAt }) => ({ mark, rpm, readAt })),
  ];
  const newestFirst = dated
    .filter(({ readAt }) => readAt >= oldest)
    .sort((a, b) => (a.readAt < b.readAt ? 1 : a.readAt > b.readAt ? -1 : 0));
  let inForce: readonly DialReading[] = [];
  for (const { mark, rpm } of newestFirst) {
    const withThis = [...inForce, { mark, rpm }].sort((a, b) => inOrder(a.mark, b.mark));
    if (isSound({ ...dial, readings: withThis })) inForce = withThis;
  }
  return inForce.length > 0 ? { ...dial, readings: inForce } : dial;
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

function isSize(oneMm: number, otherMm: number): boolean {
  return Math.abs(oneMm - otherMm) <= SAME_SIZE_MM;
}
