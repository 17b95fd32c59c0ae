import { ENGINE_VERSION } from "@rimwise/domain";
import type { CourseRecord } from "../courses/schema.ts";
import { stricterOf } from "../courses/stricter.ts";
import { Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord } from "../store/changes.ts";
import { groundsFor, type Ids, mayRun, replacedBy, requireReplaceable } from "./decide.ts";
import { approvalKind, groundsKind } from "./kind.ts";
import type { ApprovalRecord, GroundsRecord } from "./record-schema.ts";
import { type ApprovalResult, inputDigestOf, settingOf } from "./result.ts";
import { asksForTwo } from "./two-persons.ts";
import { validity } from "./validity.ts";

/** What an instructor saw of the difference, and until when the setting is to hold. */
type Seen = {
  readonly resultDigest: string;
  readonly validUntil: string | undefined;
  /** How long the readings that it rests on hold. */
  readonly readingsUntil: string | undefined;
};

/**
 * Issues a setting again, with the plan as computed now, in place of one that lapsed or expired, after its difference was seen.
 * When two persons are needed it is drafted: another person issues it, and until then the old one stays what it is.
 */
export function reissueApproval(
  { approvalId, groundsId }: Ids,
  old: ApprovalRecord,
  grounds: GroundsRecord,
  course: CourseRecord,
  result: ApprovalResult,
  seen: Seen,
  by: string,
  at: string,
): Decision<ApprovalRecord> {
  requireReplaceable(old);
  const { planned, resultDigest } = mayRun(result);
  if (resultDigest !== seen.resultDigest) {
    throw new Problem(
      "result-changed",
      "The result has changed since it was looked at. Look at the difference again.",
    );
  }
  const {
    lapseId: _lapse,
    issuedAt: _at,
    issuedBy: _by,
    replacedById: _id,
    sheetsUntil: _until,
    ...same
  } = old;
  const isDraft = asksForTwo(old, course);
  const fields = {
    ...same,
    replacesId: old.id,
    ...validity(at, seen.validUntil ?? old.validUntil, course, seen.readingsUntil, at),
    ...(isDraft ? { state: "draft" as const } : { state: "issued" as const, issuedAt: at, issuedBy: by }),
    draftedBy: by,
    isTwoPerson: isDraft,
    requirements: stricterOf(old.requirements, course.requirements),
    setting: settingOf(planned),
    resultDigest,
    inputDigest: inputDigestOf(grounds.request, planned),
    engineVersion: ENGINE_VERSION,
  };
  const record: ApprovalRecord = newRecord(approvalId, fields, at);
  const fresh = groundsFor(groundsId, approvalId, grounds.request, planned, at);
  const shown = { id: groundsId, approvalId, inputDigest: record.inputDigest };
  const created = creation(approvalKind, record);
  const issued = { ...created, event: { ...created.event, type: "approval.issued" } };
  return {
    record,
    changes: [
      creation(groundsKind, fresh, shown),
      ...(isDraft ? [created] : [replacedBy(approvalId, old, at), issued]),
    ],
  };
}
