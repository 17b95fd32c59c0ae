import { ENGINE_VERSION } from "@rimwise/domain";
import { creation } from "../store/changes.ts";
import type { Change, Stamp } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { groundsAt } from "./grounds.ts";
import { approvalKind, lapseKind } from "./kind.ts";
import { lapseOf, newLapse, shownResult, wholeOf } from "./lapse.ts";
import { approvals } from "./reads.ts";
import type { ApprovalRecord, GroundsRecord, InForce } from "./record-schema.ts";
import { type ApprovalResult, resultOn, sayTheSame } from "./result.ts";

/**
 * What a new version of the computation makes of the approvals in force: one whose plan would say something else lapses, and one
 * whose plan says the same carries the new version on.
 */
export function* approvalsJudgedAgain({ at }: Stamp): Question<readonly Change[]> {
  const changes: Change[] = [];
  const groundsNow = groundsAt(at);
  for (const inForce of yield* approvals.inForce()) {
    const approval = yield* wholeOf(inForce.id);
    if (approval.engineVersion === ENGINE_VERSION) continue;
    const kept = yield* approvals.groundsOf(inForce.id);
    if (kept === undefined) throw new Error(`${inForce.id} is in force without its grounds`);
    const result = resultOn(yield* groundsNow(kept.request, approval.woodIds, approval.courseId));
    if (result.kind === "may-run" && isSame(result, approval, kept)) {
      changes.push(carriedOn(inForce, approval, result, at));
      continue;
    }
    const happened = { subjectId: inForce.id, event: renewal(approval.engineVersion) };
    const { setting, reason } = shownResult(result);
    const lapse = newLapse(`The computation was renewed. ${reason}`, happened, approval.setting, setting, at);
    changes.push(creation(lapseKind, lapse), lapseOf(inForce, lapse, at));
  }
  return changes;
}

/** Whether a setting is still what was approved; its digest may have been made of more than what decides, in earlier versions. */
function isSame(
  { resultDigest, planned }: Extract<ApprovalResult, { readonly kind: "may-run" }>,
  approval: ApprovalRecord,
  { results }: GroundsRecord,
): boolean {
  return resultDigest === approval.resultDigest || sayTheSame(planned, results);
}

function renewal(before: string) {
  const data = { before: { engineVersion: before }, after: { engineVersion: ENGINE_VERSION } };
  return { type: "computation.renewed", data };
}

function carriedOn(
  { id, version }: InForce,
  { engineVersion, resultDigest }: ApprovalRecord,
  result: Extract<ApprovalResult, { readonly kind: "may-run" }>,
  at: string,
): Change {
  const before = { engineVersion, resultDigest };
  const after = { engineVersion: ENGINE_VERSION, resultDigest: result.resultDigest };
  return {
    action: "amend",
    kind: approvalKind,
    id,
    fields: { version: version + 1, updatedAt: at, ...after },
    expectedVersion: version,
    event: { type: "approval.judged-again", data: { before, after } },
  };
}
