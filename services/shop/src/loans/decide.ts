import { bitAfter } from "../bits/decide.ts";
import type { BitRecord } from "../bits/schema.ts";
import { requireUsable } from "../bits/standing.ts";
import { withoutUndefined } from "../http/given.ts";
import { daysAfter, momentAfter } from "../http/moment.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { loanKind } from "./kind.ts";
import type { LoanRecord } from "./schema.ts";

const USUAL_LOAN_MS = 24 * 60 * 60 * 1000;

type Asked = {
  readonly personId: string;
  readonly routerId?: string;
  readonly job?: string;
  readonly jobId?: string;
  readonly dueAt?: string;
  /** Who asked, if it is a person. */
  readonly lentBy?: string;
};

/** Takes a bit out, for so many days at most. One that is out, away, held or retired cannot be taken. */
export function lendBit(
  id: string,
  bit: BitRecord,
  asked: Asked,
  termDays: number,
  at: string,
): Decision<LoanRecord> {
  requireUsable(bit);
  if (bit.state !== "in-rack") {
    const where = bit.loanId === undefined ? "away at sharpening" : `out on loan ${bit.loanId}`;
    throw new Problem("bit-not-available", `Bit ${bit.id} is ${where}.`);
  }
  const { personId, routerId, job, jobId, dueAt, lentBy } = asked;
  const end = dueAt === undefined ? usualEnd(at) : momentAfter(at, dueAt, "/dueAt");
  const latest = daysAfter(at, termDays);
  if (end > latest) {
    const accepted = `a time in the next ${termDays} days: until ${latest}`;
    throw notValid([{ in: "body", pointer: "/dueAt", message: "A bit is not lent for so long.", accepted }]);
  }
  const fields = withoutUndefined({ bitId: bit.id, personId, lentBy, routerId, job, jobId, dueAt: end });
  const record: LoanRecord = newRecord(id, fields, at);
  const lent = bitAfter(bit, "lent", { loanId: id, placeId: undefined, missingSince: undefined }, at);
  // The bit first: if somebody else has just taken it, that says so before a second loan of it is tried.
  return { record, changes: [...lent.changes, creation(loanKind, record)] };
}

/** Brings a bit back to a place, or to where it belongs. A bit that was held while it was out stays held. */
export function returnBit(
  loan: LoanRecord,
  bit: BitRecord | undefined,
  placeId: string | undefined,
  returnedBy: string | undefined,
  at: string,
): Decision<LoanRecord> {
  if (loan.returnedAt !== undefined) {
    throw new Problem("loan-ended", `It came back at ${loan.returnedAt}.`);
  }
  const place = placeId ?? bit?.homePlaceId;
  const record: LoanRecord = {
    ...nextVersion(loan, at),
    returnedAt: at,
    ...(returnedBy !== undefined && { returnedBy }),
    ...(place !== undefined && { returnedPlaceId: place }),
  };
  const back = bit && bitAfter(bit, "returned", { loanId: undefined, placeId: place }, at);
  return {
    record,
    changes: [replacement(loanKind, loan, record, "returned"), ...(back?.changes ?? [])],
  };
}

function usualEnd(at: string): string {
  return new Date(new Date(at).getTime() + USUAL_LOAN_MS).toISOString();
}
