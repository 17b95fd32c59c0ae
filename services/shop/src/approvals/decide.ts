import { ENGINE_VERSION, woodById } from "@rimwise/domain";
import type { CourseRecord } from "../courses/schema.ts";
import type { PlanRecord } from "../plans/schema.ts";
import { notValid, Problem } from "../problems/problem.ts";
import {
  creation,
  type Decision,
  type FieldsOf,
  newRecord,
  nextVersion,
  replacement,
} from "../store/changes.ts";
import { approvalKind, groundsKind } from "./kind.ts";
import type { ApprovalRecord, GroundsRecord } from "./record-schema.ts";
import { type ApprovalResult, inputDigestOf, resultsOf, settingOf } from "./result.ts";
import type { NewApproval } from "./schema.ts";

type Ids = { readonly approvalId: string; readonly groundsId: string };
/** What an instructor saw of the difference, and until when the setting is to hold. */
type Seen = {
  readonly resultDigest: string;
  readonly validUntil: string | undefined;
  /** How long the readings that it rests on hold. */
  readonly readingsUntil: string | undefined;
};
type MayRun = Extract<ApprovalResult, { readonly kind: "may-run" }>;

const LONGEST_MS = 2 * 366 * 24 * 60 * 60 * 1000;

/** What a draft is made for: the woods of its plan and the ones beside it. Throws if one does not exist. */
export function woodsOf({ request }: PlanRecord, { woodIds = [] }: NewApproval): string[] {
  const unknown = woodIds.flatMap((id, index) => (woodById(id) === undefined ? [index] : []));
  if (unknown.length > 0) {
    throw notValid(
      unknown.map((index) =>
        fault(`/woodIds/${index}`, "There is no such wood.", "an id that GET /v1/woods lists"),
      ),
    );
  }
  return [...new Set([request.woodId, ...woodIds])];
}

/** Drafts a setting from a plan, computed again under the course's policy. `until` is how long its readings hold. */
export function draftApproval(
  { approvalId, groundsId }: Ids,
  given: NewApproval,
  plan: PlanRecord,
  course: CourseRecord,
  result: ApprovalResult,
  until: string | undefined,
  draftedBy: string,
  at: string,
): Decision<ApprovalRecord> {
  const { planned, resultDigest } = mayRun(result);
  const { bit, router, mounting } = plan.request;
  if (!("id" in bit) || !("id" in router)) {
    throw notValid([
      fault(
        "/planId",
        "The plan is for a bit or a router that is not kept here.",
        "a plan for a bit and a router of the shop",
      ),
    ]);
  }
  const fields: FieldsOf<typeof approvalKind> = {
    name: given.name,
    courseId: course.id,
    planId: plan.id,
    bitId: bit.id,
    routerId: router.id,
    mounting,
    woodIds: planned.map(({ input }) => input.wood.id),
    ...(given.personIds && { personIds: given.personIds }),
    ...(given.skill !== undefined && { skill: given.skill }),
    supervision: given.supervision,
    ...validity(given.validFrom, given.validUntil, course, until, at),
    state: "draft",
    setting: settingOf(planned),
    resultDigest,
    inputDigest: inputDigestOf(plan.request, planned),
    engineVersion: ENGINE_VERSION,
    draftedBy,
  };
  const record = newRecord(approvalId, fields, at);
  const grounds = groundsFor(groundsId, approvalId, plan.request, planned, at);
  const shown = { id: groundsId, approvalId, inputDigest: record.inputDigest };
  return { record, changes: [creation(approvalKind, record), creation(groundsKind, grounds, shown)] };
}

/** Issues a draft: from then on it may be relied on. Where the course asks for two persons, another one than who drafted it. */
export function issueApproval(
  current: ApprovalRecord,
  course: CourseRecord,
  result: ApprovalResult,
  issuedBy: string,
  at: string,
): Decision<ApprovalRecord> {
  if (current.state !== "draft") throw notFitting(current, "Only a draft can be issued.");
  requireSecond(course, current.draftedBy, issuedBy);
  if (mayRun(result).resultDigest !== current.resultDigest) {
    throw new Problem("result-changed", "The plan would be different now. Draft it again from a new plan.");
  }
  const record: ApprovalRecord = { ...nextVersion(current, at), state: "issued", issuedAt: at, issuedBy };
  return { record, changes: [replacement(approvalKind, current, record, "issued")] };
}

/** Ends a setting by hand. */
export function withdrawApproval(
  current: ApprovalRecord,
  because: string,
  at: string,
): Decision<ApprovalRecord> {
  if (current.state === "withdrawn" || current.state === "replaced")
    throw notFitting(current, "It has ended already.");
  const record: ApprovalRecord = {
    ...nextVersion(current, at),
    state: "withdrawn",
    withdrawal: { at, because },
  };
  return { record, changes: [replacement(approvalKind, current, record, "withdrawn")] };
}

/** Issues a setting again, with the plan as computed now, in place of one that lapsed or expired, after its difference was seen. */
export function reissueApproval(
  { approvalId, groundsId }: Ids,
  old: ApprovalRecord,
  grounds: GroundsRecord,
  course: CourseRecord,
  result: ApprovalResult,
  seen: Seen,
  issuedBy: string,
  at: string,
): Decision<ApprovalRecord> {
  if (old.state !== "lapsed" && old.state !== "issued")
    throw notFitting(old, "Only what was in force can be issued again.");
  requireSecond(course, old.issuedBy === undefined ? old.draftedBy : undefined, issuedBy);
  const { planned, resultDigest } = mayRun(result);
  if (resultDigest !== seen.resultDigest) {
    throw new Problem(
      "result-changed",
      "The result has changed since it was looked at. Look at the difference again.",
    );
  }
  const { lapseId: _lapse, issuedAt: _at, replacedById: _by, sheetsUntil: _until, ...same } = old;
  const fields = {
    ...same,
    replacesId: old.id,
    ...validity(at, seen.validUntil ?? old.validUntil, course, seen.readingsUntil, at),
    state: "issued" as const,
    issuedAt: at,
    issuedBy,
    setting: settingOf(planned),
    resultDigest,
    inputDigest: inputDigestOf(grounds.request, planned),
    engineVersion: ENGINE_VERSION,
  };
  const record: ApprovalRecord = newRecord(approvalId, fields, at);
  const replaced: ApprovalRecord = { ...nextVersion(old, at), state: "replaced", replacedById: approvalId };
  const fresh = groundsFor(groundsId, approvalId, grounds.request, planned, at);
  const shown = { id: groundsId, approvalId, inputDigest: record.inputDigest };
  return {
    record,
    changes: [
      creation(groundsKind, fresh, shown),
      replacement(approvalKind, old, replaced, "replaced"),
      { ...creation(approvalKind, record), event: { type: "approval.issued", data: { after: record } } },
    ],
  };
}

function groundsFor(
  id: string,
  approvalId: string,
  request: GroundsRecord["request"],
  planned: MayRun["planned"],
  at: string,
): GroundsRecord {
  return newRecord(id, { approvalId, request, results: resultsOf(planned) }, at);
}

function mayRun(result: ApprovalResult): MayRun {
  if (result.kind === "may-run") return result;
  throw new Problem("may-not-run", result.because);
}

/** From when until when: not longer than the course, nor than the readings it rests on. */
function validity(
  from: string | undefined,
  until: string,
  { endsAt }: CourseRecord,
  readingsUntil: string | undefined,
  at: string,
): { readonly validFrom: string; readonly validUntil: string } {
  const validFrom = new Date(from ?? at).toISOString();
  const asked = new Date(until);
  if (asked.toISOString() <= validFrom || asked.toISOString() <= at) {
    throw notValid([
      fault("/validUntil", "It would be over before it begins.", "a time after now and after validFrom"),
    ]);
  }
  if (asked.getTime() > new Date(at).getTime() + LONGEST_MS) {
    throw notValid([fault("/validUntil", "That is too far away.", "a time within two years")]);
  }
  const ends = [asked.toISOString(), endsAt, readingsUntil].filter((each) => each !== undefined).sort();
  const validUntil = ends[0] ?? asked.toISOString();
  if (validUntil > at) return { validFrom, validUntil };
  throw new Problem("course-over", "The course, or a reading that this rests on, has run out.");
}

function requireSecond({ isTwoPerson }: CourseRecord, first: string | undefined, second: string): void {
  if (!isTwoPerson || first === undefined || first !== second) return;
  throw new Problem("second-person-needed", "In this course another person issues than the one who drafted.");
}

function notFitting({ id, state }: ApprovalRecord, why: string): Problem {
  return new Problem("invalid-state", `Approval ${id} is ${state}. ${why}`);
}

function fault(pointer: string, message: string, accepted: string) {
  return { in: "body", pointer, message, accepted } as const;
}
