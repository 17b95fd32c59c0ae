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
import type { Change } from "../store/port.ts";
import { approvalKind, groundsKind } from "./kind.ts";
import type { ApprovalRecord, GroundsRecord } from "./record-schema.ts";
import { type ApprovalResult, inputDigestOf, resultsOf, settingOf } from "./result.ts";
import type { NewApproval } from "./schema.ts";
import { asksForTwo, requireTwoPersons } from "./two-persons.ts";
import { validity } from "./validity.ts";

/** Ids for an approval and its grounds. */
export type Ids = { readonly approvalId: string; readonly groundsId: string };
type MayRun = Extract<ApprovalResult, { readonly kind: "may-run" }>;

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
    isTwoPerson: course.isTwoPerson,
    requirements: course.requirements,
  };
  const record = newRecord(approvalId, fields, at);
  const grounds = groundsFor(groundsId, approvalId, plan.request, planned, at);
  const shown = { id: groundsId, approvalId, inputDigest: record.inputDigest };
  return { record, changes: [creation(approvalKind, record), creation(groundsKind, grounds, shown)] };
}

/** What issuing a draft rests on. */
type Issuing = {
  readonly course: CourseRecord;
  /** Who drafted it, if that was a person. */
  readonly drafterId: string | undefined;
  /** What the draft is to replace, if anything. */
  readonly replaces: ApprovalRecord | undefined;
  readonly result: ApprovalResult;
};

/** Issues a draft: from then on it may be relied on, and what it replaces has ended. */
export function issueApproval(
  current: ApprovalRecord,
  { course, drafterId, replaces, result }: Issuing,
  issuedBy: string,
  at: string,
): Decision<ApprovalRecord> {
  if (current.state !== "draft") throw invalidState(current, "Only a draft can be issued.");
  if (asksForTwo(current, course)) requireTwoPersons(drafterId, issuedBy);
  if (mayRun(result).resultDigest !== current.resultDigest) {
    throw new Problem("result-changed", "The plan would be different now. Draft it again from a new plan.");
  }
  const record: ApprovalRecord = { ...nextVersion(current, at), state: "issued", issuedAt: at, issuedBy };
  const ended = replaces === undefined ? [] : [replacedBy(record.id, replaces, at)];
  return { record, changes: [...ended, replacement(approvalKind, current, record, "issued")] };
}

/** The end of what was in force, by another that takes its place. */
export function replacedBy(id: string, old: ApprovalRecord, at: string): Change {
  requireReplaceable(old);
  const record: ApprovalRecord = { ...nextVersion(old, at), state: "replaced", replacedById: id };
  return replacement(approvalKind, old, record, "replaced");
}

/** Refuses what was never in force, or was ended for good. */
export function requireReplaceable(old: ApprovalRecord): void {
  if (old.state === "lapsed" || old.state === "issued") return;
  throw invalidState(old, "Only what was in force can be issued again.");
}

/** Ends a setting by hand. */
export function withdrawApproval(
  current: ApprovalRecord,
  reason: string,
  at: string,
): Decision<ApprovalRecord> {
  if (current.state === "withdrawn" || current.state === "replaced")
    throw invalidState(current, "It has ended already.");
  const record: ApprovalRecord = {
    ...nextVersion(current, at),
    state: "withdrawn",
    withdrawal: { at, reason },
  };
  return { record, changes: [replacement(approvalKind, current, record, "withdrawn")] };
}

/** The full copy of what an approval was made from. */
export function groundsFor(
  id: string,
  approvalId: string,
  request: GroundsRecord["request"],
  planned: MayRun["planned"],
  at: string,
): GroundsRecord {
  return newRecord(id, { approvalId, request, results: resultsOf(planned) }, at);
}

/** A result that may be approved; throws when nothing may be run. */
export function mayRun(result: ApprovalResult): MayRun {
  if (result.kind === "may-run") return result;
  throw new Problem("may-not-run", result.reason);
}

/** The refusal of what an approval in its state does not allow. */
export function invalidState({ id, state }: ApprovalRecord, why: string): Problem {
  return new Problem("invalid-state", `Approval ${id} is ${state}. ${why}`);
}

function fault(pointer: string, message: string, accepted: string) {
  return { in: "body", pointer, message, accepted } as const;
}
