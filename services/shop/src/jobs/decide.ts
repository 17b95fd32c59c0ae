import type { BitRecord } from "../bits/schema.ts";
import { merged } from "../http/fields.ts";
import { withoutUndefined } from "../http/given.ts";
import { type FieldFault, notValid, Problem } from "../problems/problem.ts";
import { reservationKind } from "../reservations/kind.ts";
import type { ReservationRecord } from "../reservations/schema.ts";
import { creation, type Decision, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Change } from "../store/port.ts";
import type { SetupMadeRecord } from "./act-schema.ts";
import { jobKind } from "./kind.ts";
import type { JobChange, JobRecord, NewJob } from "./schema.ts";
import type { JobWork } from "./work-schema.ts";

/** A job to keep, as it was computed. */
export function keepJob(id: string, given: NewJob, work: JobWork, at: string): Decision<JobRecord> {
  const record: JobRecord = newRecord(
    id,
    withoutUndefined({ ...given, state: "draft" as const, work, made: [] }),
    at,
  );
  return { record, changes: [creation(jobKind, record)] };
}

/** A draft as it is changed, before it is computed again. Throws a problem for one that is settled. */
export function changedJob(current: JobRecord, change: JobChange): JobRecord {
  requireState(current, ["draft"], "Only a draft can be changed. Reopen it first.");
  const next = merged<JobRecord>(current, change);
  requireDaysInOrder(next);
  return next;
}

/** A job computed again. */
export function recomputed(
  current: JobRecord,
  fields: JobRecord,
  work: JobWork,
  at: string,
): Decision<JobRecord> {
  const record = { ...nextVersion(fields, at), work };
  return { record, changes: [replacement(jobKind, current, record)] };
}

/** Refuses to compute a job again that has ended. */
export function requireOpen(job: JobRecord): void {
  requireState(job, ["draft", "ready", "under-way"], "It has ended.");
}

/** What stands in the way of making a job ready, as sentences. */
type InTheWay = readonly string[];

/** A draft made ready: its bits are kept for its days. Throws a problem that says everything that stands in the way. */
export function readyJob(
  current: JobRecord,
  bits: readonly BitRecord[],
  inTheWay: InTheWay,
  at: string,
): Decision<JobRecord> {
  requireState(current, ["draft"], "Only a draft can be made ready.");
  const days = requireDays(current);
  const refusals = current.work.findings
    .filter(({ severity }) => severity === "refuse")
    .map(({ text }) => text);
  const reasons = [...refusals, ...inTheWay];
  if (reasons.length > 0) throw new Problem("job-not-ready", reasons.join(" "));
  const record: JobRecord = { ...nextVersion(current, at), state: "ready" };
  const kept = bits.map((bit) => {
    const fields = withoutUndefined({ bitId: bit.id, jobId: current.id, personId: current.personId });
    const reservation: ReservationRecord = newRecord(
      newId(reservationKind.idPrefix),
      { ...fields, ...days, state: "kept" as const },
      at,
    );
    return creation(reservationKind, reservation);
  });
  return { record, changes: [replacement(jobKind, current, record, "made-ready"), ...kept] };
}

/** A ready job as a draft again: its bits are free. */
export function reopenJob(
  current: JobRecord,
  kept: readonly ReservationRecord[],
  at: string,
): Decision<JobRecord> {
  requireState(current, ["ready"], "Only a job that is ready and not begun can be reopened.");
  const record: JobRecord = { ...nextVersion(current, at), state: "draft" };
  return { record, changes: [replacement(jobKind, current, record, "reopened"), ...released(kept, at)] };
}

/** A job with one set-up made, and computed again for the rest. After the last one it is done, and its bits are free. */
export function setupMade(
  current: JobRecord,
  made: SetupMadeRecord,
  work: JobWork,
  kept: readonly ReservationRecord[],
  at: string,
): Decision<JobRecord> {
  // What cannot be planned any more has no set-up either: that job is not done.
  const isLast = work.setups.length === 0 && work.verdict !== "do-not-run";
  const record: JobRecord = {
    ...nextVersion(current, at),
    state: isLast ? "done" : "under-way",
    work,
    made: [...current.made, made],
  };
  const changes = [
    replacement(jobKind, current, record, "set-up-made"),
    ...(isLast ? released(kept, at) : []),
  ];
  return { record, changes };
}

/** A job that is made no further. */
export function endJob(
  current: JobRecord,
  as: "done" | "dropped",
  kept: readonly ReservationRecord[],
  at: string,
): Decision<JobRecord> {
  requireOpen(current);
  const record: JobRecord = { ...nextVersion(current, at), state: as };
  return { record, changes: [replacement(jobKind, current, record, "ended"), ...released(kept, at)] };
}

/** Refuses days that end before they begin. */
export function requireDaysInOrder({ startsOn, wantedOn }: Pick<NewJob, "startsOn" | "wantedOn">): void {
  if (startsOn === undefined || wantedOn === undefined || startsOn <= wantedOn) return;
  throw notValid([dayFault("/wantedOn", "That is before it starts.", `${startsOn} or later`)]);
}

/** Refuses a job that is in none of these states. */
export function requireState(job: JobRecord, states: readonly JobRecord["state"][], why: string): void {
  if (!states.includes(job.state))
    throw new Problem("invalid-state", `Job ${job.id} is ${job.state}. ${why}`);
}

function requireDays({ startsOn, wantedOn }: JobRecord) {
  const faults = [
    ...(startsOn === undefined ? [dayFault("/startsOn", "It is needed.", "the first day of work")] : []),
    ...(wantedOn === undefined ? [dayFault("/wantedOn", "It is needed.", "the day it is wanted")] : []),
  ];
  if (startsOn === undefined || wantedOn === undefined) throw notValid(faults);
  return { from: startsOn, until: wantedOn };
}

function released(kept: readonly ReservationRecord[], at: string): Change[] {
  return kept
    .filter(({ state }) => state === "kept")
    .map((each) =>
      replacement(reservationKind, each, { ...nextVersion(each, at), state: "released" }, "released"),
    );
}

function dayFault(pointer: string, message: string, accepted: string): FieldFault {
  return { in: "body", pointer, message, accepted };
}
