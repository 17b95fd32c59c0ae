import { isChangeOf, subjectOf } from "../store/changes.ts";
import { type Change, ConflictError, type InTransactionRule } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { endsWithCourse } from "./course-end.ts";
import { groundsAt } from "./grounds.ts";
import { approvalKind } from "./kind.ts";
import { type Consequences, lapsesAfter } from "./lapse.ts";
import { approvals } from "./reads.ts";
import { resultOn } from "./result.ts";

/**
 * What approvals make of every change: those that rest on what changed lapse, those of a course that ends earlier end with it, and
 * one that is being issued must still have the result it was decided on. Throws ConflictError when it has not.
 */
export function approvalsHold(consequences: Consequences): InTransactionRule {
  return function* (changes, stamp) {
    for (const change of changes) yield* requireSameResult(change, stamp.at);
    const lapsed = yield* lapsesAfter(changes, stamp, consequences);
    return [...lapsed, ...(yield* endsWithCourse(changes, new Set(lapsed.map(subjectOf)), stamp))];
  };
}

function* requireSameResult(change: Change, at: string): Question<void> {
  if (!isChangeOf(change, approvalKind) || !("record" in change)) return;
  const { id, state, issuedAt, woodIds, courseId, resultDigest } = change.record;
  if (state !== "issued" || issuedAt !== at) return;
  const request = yield* approvals.requestOf(id);
  const result = request && resultOn(yield* groundsAt(at)(request, woodIds, courseId));
  if (result?.kind !== "may-run" || result.resultDigest !== resultDigest) {
    throw new ConflictError(approvalKind, id);
  }
}
