import type { ReservationRecord } from "./schema.ts";

/** Days from one to another, both among them, as `2026-11-27`. */
export type Days = { readonly from: string; readonly until: string };

/** Whether two stretches of days have one in common. */
export function shareADay(one: Days, other: Days): boolean {
  return one.from <= other.until && other.from <= one.until;
}

/** The day of a moment, in UTC. */
export function dayOf(moment: string): string {
  return moment.slice(0, 10);
}

/** Whoever takes a bit: for a job, in somebody's name. */
export type Taker = { readonly jobId?: string | undefined; readonly personId?: string | undefined };

/** Those of a bit's reservations that stand in the way of somebody who takes it for these days. */
export function inTheWay(
  kept: readonly ReservationRecord[],
  days: Days,
  { jobId, personId }: Taker,
): ReservationRecord[] {
  return kept.filter(
    (each) =>
      shareADay(each, days) &&
      each.jobId !== jobId &&
      !(jobId === undefined && personId !== undefined && each.personId === personId),
  );
}
