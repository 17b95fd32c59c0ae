import { isSameSize, type Policy, type Router } from "@rimwise/domain";
import type { ColletRecord } from "../collets/schema.ts";
import type { ReadingRecord } from "../dial-readings/schema.ts";
import { bareRouter } from "../routers/bare.ts";
import type { RouterRecord } from "../routers/schema.ts";
import { dialInForce } from "./readings.ts";

/** What is kept of a router beside its own record. */
export type RouterParts = {
  /** Newest entry first. */
  readonly readings: readonly ReadingRecord[];
  readonly collets: readonly ColletRecord[];
};

/**
 * A router as it can be used at a moment: with the readings that count, those that do not and why, and without the sizes for
 * which every collet is held or retired.
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
