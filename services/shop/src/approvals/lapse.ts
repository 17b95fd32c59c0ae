import { creation, subjectOf } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Change, Stamp } from "../store/port.ts";
import type { ApprovalRecord, InForce, LapseRecord, Setting } from "./approval.ts";
import { happeningOf } from "./happening.ts";
import { type Outcome, outcomeOn, settingOf } from "./outcome.ts";
import type { GroundQueries } from "./reads.ts";

/** Which settings a change may move the ground of. */
type Touched = { readonly field: "bitId" | "routerId" | "courseId"; readonly id: string } | "all";

type Reworked = {
  readonly resultDigest: string | undefined;
  readonly setting: Setting | null;
  readonly because: string;
};

/**
 * The settings that no longer hold after these changes, each with the change that ends it: everything that one rests on is
 * computed anew, and where the result is another one it lapses. Runs in the transaction of the changes, after them, so
 * that there is no moment at which a setting is in force whose ground has moved.
 */
export function lapsesAfter(changes: readonly Change[], { at }: Stamp, queries: GroundQueries): Change[] {
  const lapsed = new Map<string, Change>();
  const reasons = new Map<string, LapseRecord>();
  const reworkedNow = reworking(at, queries);
  for (const change of changes) {
    for (const approval of affectedBy(touchedBy(change), queries)) {
      if (lapsed.has(approval.id)) continue;
      const now = reworkedNow(approval);
      if (now.resultDigest === approval.resultDigest) continue;
      const alike = `${change.event.type} ${subjectOf(change)} ${approval.resultDigest} ${now.resultDigest ?? now.because}`;
      const reason = reasons.get(alike) ?? lapseBy(queries.wholeOf(approval.id), change, now, at);
      reasons.set(alike, reason);
      lapsed.set(approval.id, lapseOf(approval, reason, at));
    }
  }
  return [...[...reasons.values()].map((reason) => creation("lapse", reason)), ...lapsed.values()];
}

/** What settings come out to at a moment. Those that were made from the same for one course are computed once. */
function reworking(at: string, queries: GroundQueries): (approval: InForce) => Reworked {
  const known = new Map<string, Reworked>();
  const groundNow = queries.groundsAt(at);
  return ({ id, inputDigest, courseId }) => {
    const alike = `${inputDigest} ${courseId}`;
    const before = known.get(alike);
    if (before !== undefined) return before;
    const request = queries.requestOf(id);
    const now: Reworked =
      request === undefined
        ? { resultDigest: undefined, setting: null, because: "What it was made from is gone." }
        : reworkedFrom(outcomeOn(groundNow(request, queries.wholeOf(id).woodIds, courseId)));
    known.set(alike, now);
    return now;
  };
}

function touchedBy(change: Change): Touched | undefined {
  const id = subjectOf(change);
  // Nothing rests yet on what is new itself; on a trial or a reading's bit and router it may.
  if (change.action === "create" && (change.type === "bit" || change.type === "router")) return undefined;
  switch (change.type) {
    case "bit":
      return { field: "bitId", id };
    case "router":
      return { field: "routerId", id };
    case "course":
      return { field: "courseId", id };
    case "shop-policy":
      return "all";
    case "speed-trial":
    case "run-out-reading":
    case "use":
      return "record" in change ? { field: "bitId", id: change.record.bitId } : "all";
    case "dial-reading":
    case "collet":
      return "record" in change ? { field: "routerId", id: change.record.routerId } : "all";
    default:
      return undefined;
  }
}

function affectedBy(touched: Touched | undefined, queries: GroundQueries): InForce[] {
  if (touched === undefined) return [];
  return touched === "all" ? queries.inForce() : queries.inForceOn(touched.field, touched.id);
}

function reworkedFrom(outcome: Outcome): Reworked {
  if (outcome.kind === "may-not-run")
    return { resultDigest: undefined, setting: null, because: outcome.because };
  const { resultDigest, planned } = outcome;
  return { resultDigest, setting: settingOf(planned), because: "It would come out otherwise now." };
}

/** Why a setting lapses. */
function lapseBy({ setting }: ApprovalRecord, change: Change, now: Reworked, at: string): LapseRecord {
  const { type: event, data } = change.event;
  const { before, after } = data;
  return {
    id: newId("lapse"),
    because: `${happeningOf(event)} ${now.because}`,
    cause: {
      event,
      subjectId: subjectOf(change),
      ...(isObject(before) && { before }),
      ...(isObject(after) && { after }),
    },
    before: setting,
    ...(now.setting && { after: now.setting }),
    createdAt: at,
    updatedAt: at,
    version: 1,
  };
}

function lapseOf({ id, version }: InForce, { id: lapseId, because }: LapseRecord, at: string): Change {
  return {
    action: "amend",
    type: "approval",
    id,
    fields: { version: version + 1, updatedAt: at, state: "lapsed", lapseId },
    expectedVersion: version,
    event: {
      type: "approval.lapsed",
      data: { before: { state: "issued" }, after: { state: "lapsed", lapseId, because } },
    },
  };
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}
