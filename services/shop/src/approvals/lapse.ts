import { creation, newRecord, subjectOf } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Change, EventDraft, Stamp } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { groundsAt } from "./grounds.ts";
import { approvalKind, lapseKind } from "./kind.ts";
import { approvals } from "./reads.ts";
import type { ApprovalRecord, ApprovedSetting, InForce, LapseRecord } from "./record-schema.ts";
import { type ApprovalResult, resultOn, settingOf } from "./result.ts";

/** Which approvals may rest on something: those on one record, or all. */
export type Touched = { readonly field: "bitId" | "routerId" | "courseId"; readonly id: string } | "all";

/** What the rooms say of a change. */
export type Consequences = {
  /** Which approvals it may end; undefined when none. Every kind of record has an answer. */
  readonly touchedBy: (change: Change) => Touched | undefined;
  /** What it was, as a sentence. */
  readonly happened: (change: Change) => string;
};

/** What ended an approval. */
type Happened = { readonly subjectId: string; readonly event: EventDraft };

export type ResultNow = {
  readonly resultDigest: string | undefined;
  readonly setting: ApprovedSetting | null;
  readonly reason: string;
};

/**
 * The approvals that no longer hold after these changes, each with the change that ends it: everything that one rests on is
 * computed again, and when the result differs it lapses. Runs in the transaction of the changes, after them, so
 * that there is no moment at which an approval is in force whose grounds have changed.
 */
export function* lapsesAfter(
  changes: readonly Change[],
  { at }: Stamp,
  { touchedBy, happened }: Consequences,
): Question<Change[]> {
  const lapsed = new Map<string, Change>();
  const reasons = new Map<string, LapseRecord>();
  const resultNow = resultsAt(at);
  for (const change of changes) {
    for (const approval of yield* affectedBy(touchedBy(change))) {
      if (lapsed.has(approval.id)) continue;
      const now = yield* resultNow(approval);
      if (now.resultDigest === approval.resultDigest) continue;
      const alike = `${change.event.type} ${subjectOf(change)} ${approval.resultDigest} ${now.resultDigest ?? now.reason}`;
      const reason =
        reasons.get(alike) ??
        newLapse(
          `${happened(change)} ${now.reason}`,
          { subjectId: subjectOf(change), event: change.event },
          (yield* wholeOf(approval.id)).setting,
          now.setting,
          at,
        );
      reasons.set(alike, reason);
      lapsed.set(approval.id, lapseOf(approval, reason, at));
    }
  }
  return [...[...reasons.values()].map((reason) => creation(lapseKind, reason)), ...lapsed.values()];
}

/** The results of approvals at a moment. Those that were made from the same for one course are computed once. */
function resultsAt(at: string): (approval: InForce) => Question<ResultNow> {
  const known = new Map<string, ResultNow>();
  const groundsNow = groundsAt(at);
  return function* ({ id, inputDigest, courseId }) {
    const alike = `${inputDigest} ${courseId}`;
    const before = known.get(alike);
    if (before !== undefined) return before;
    const request = yield* approvals.requestOf(id);
    const now: ResultNow =
      request === undefined
        ? { resultDigest: undefined, setting: null, reason: "What it was made from is gone." }
        : shownResult(resultOn(yield* groundsNow(request, (yield* wholeOf(id)).woodIds, courseId)));
    known.set(alike, now);
    return now;
  };
}

function* affectedBy(touched: Touched | undefined): Question<InForce[]> {
  if (touched === undefined) return [];
  return touched === "all"
    ? yield* approvals.inForce()
    : yield* approvals.inForceOn(touched.field, touched.id);
}

/** An approval that is known to be kept. */
export function* wholeOf(id: string): Question<ApprovalRecord> {
  const approval = yield* approvals.find(id);
  if (approval === undefined) throw new Error(`${id} is in force and not kept`);
  return approval;
}

export function shownResult(result: ApprovalResult): ResultNow {
  if (result.kind === "may-not-run") {
    return { resultDigest: undefined, setting: null, reason: result.reason };
  }
  const { resultDigest, planned } = result;
  return { resultDigest, setting: settingOf(planned), reason: "The plan would be different now." };
}

/** The reason that approvals lapse for, to be kept: what happened to which record, and what the setting was and would be. */
export function newLapse(
  reason: string,
  { subjectId, event: { type: event, data } }: Happened,
  setting: ApprovedSetting,
  settingNow: ApprovedSetting | null,
  at: string,
): LapseRecord {
  const { before, after } = data;
  const fields = {
    reason,
    cause: {
      event,
      subjectId,
      ...(isObject(before) && { before }),
      ...(isObject(after) && { after }),
    },
    before: setting,
    ...(settingNow && { after: settingNow }),
  };
  return newRecord(newId(lapseKind.idPrefix), fields, at);
}

/** The change by which an approval in force lapses, for a reason that is kept. */
export function lapseOf(
  { id, version }: Pick<InForce, "id" | "version">,
  { id: lapseId, reason }: LapseRecord,
  at: string,
): Change {
  return {
    action: "amend",
    kind: approvalKind,
    id,
    fields: { version: version + 1, updatedAt: at, state: "lapsed", lapseId },
    expectedVersion: version,
    event: {
      type: "approval.lapsed",
      data: { before: { state: "issued" }, after: { state: "lapsed", lapseId, reason } },
    },
  };
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}
