import type { BitRecord } from "../bits/schema.ts";
import { type Days, dayOf, inTheWay, type Taker } from "./days.ts";
import type { ReservationRecord } from "./schema.ts";

/** A bit with who has it and who keeps it. */
export type BitHeld = {
  readonly record: BitRecord;
  readonly loan: (Taker & { readonly dueAt: string }) | undefined;
  readonly kept: readonly ReservationRecord[];
};

/** When somebody needs a bit, and for what: without days, at this moment. */
export type NeedOfBit = Taker & { readonly days: Days | undefined; readonly at: string };

/** Why a bit is not there for somebody, as a sentence: who has it or keeps it; undefined if it is. */
export function whyElsewhere(
  { record, loan, kept }: BitHeld,
  { at, days, ...taker }: NeedOfBit,
): string | undefined {
  if (record.sentToSharpeningAt !== undefined) return "It is away at sharpening.";
  const from = days?.from ?? dayOf(at);
  if (loan !== undefined && isInTheWay(loan, taker) && dayOf(loan.dueAt) >= from) {
    return `It is on loan until ${loan.dueAt}.`;
  }
  const [other] = inTheWay(kept, days ?? { from, until: from }, taker);
  return other && `It is kept for job ${other.jobId} from ${other.from} to ${other.until}.`;
}

function isInTheWay(loan: Taker, { jobId, personId }: Taker): boolean {
  const isForJob = jobId !== undefined && loan.jobId === jobId;
  return !isForJob && (personId === undefined || loan.personId !== personId);
}
