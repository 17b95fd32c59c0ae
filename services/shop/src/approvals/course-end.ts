import { courseKind } from "../courses/kind.ts";
import { creation, isChangeOf, subjectOf } from "../store/changes.ts";
import type { Change, Stamp } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { approvalKind, lapseKind } from "./kind.ts";
import { lapseOf, newLapse, wholeOf } from "./lapse.ts";
import { approvals } from "./reads.ts";
import type { LapseRecord, Lasting } from "./record-schema.ts";

/**
 * What an earlier end of a course does to the approvals that would outlast it: they end with it, or lapse when it is over already.
 * Runs in the transaction of the changes. `done` are those that a change has ended for another reason.
 */
export function* endsWithCourse(
  changes: readonly Change[],
  done: ReadonlySet<string>,
  { at }: Stamp,
): Question<Change[]> {
  const following: Change[] = [];
  for (const change of changes) {
    if (!isChangeOf(change, courseKind) || !("record" in change)) continue;
    const { id, endsAt } = change.record;
    if (endsAt === undefined) continue;
    const lasting = yield* approvals.outlasting(id, endsAt > at ? endsAt : at);
    const outlasting = lasting.filter((each) => !done.has(each.id));
    if (endsAt > at) following.push(...outlasting.map((each) => shortened(each, endsAt, at)));
    else following.push(...(yield* lapsedWith(change, outlasting, at)));
  }
  return following;
}

/** Ends an approval with its course. Sheets that were signed before say the later end: as long as they do, that is kept. */
function shortened({ id, version, validUntil, sheetsUntil }: Lasting, endsAt: string, at: string): Change {
  return {
    action: "amend",
    kind: approvalKind,
    id,
    fields: {
      version: version + 1,
      updatedAt: at,
      validUntil: endsAt,
      sheetsUntil: sheetsUntil ?? validUntil,
    },
    expectedVersion: version,
    event: {
      type: "approval.shortened",
      data: { before: { validUntil }, after: { validUntil: endsAt } },
    },
  };
}

function* lapsedWith(change: Change, ended: readonly Lasting[], at: string): Question<Change[]> {
  const happened = { subjectId: subjectOf(change), event: change.event };
  const reasons = new Map<string, LapseRecord>();
  const lapsed: Change[] = [];
  for (const approval of ended) {
    const { resultDigest, setting } = yield* wholeOf(approval.id);
    const reason =
      reasons.get(resultDigest) ?? newLapse("The course has ended.", happened, setting, null, at);
    reasons.set(resultDigest, reason);
    lapsed.push(lapseOf(approval, reason, at));
  }
  return [...[...reasons.values()].map((reason) => creation(lapseKind, reason)), ...lapsed];
}
