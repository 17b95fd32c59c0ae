import { nextVersion, replacement } from "../store/changes.ts";
import type { Change, Stamp } from "../store/port.ts";
import { type Outcome, outcomeOn, settingOf } from "./outcome.ts";
import type { GroundQueries } from "./reads.ts";
import type { ApprovalRecord, Lapse, Setting } from "./schema.ts";

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
  // Settings made from one plan for one course come out alike: one computation serves them all.
  const reworked = new Map<string, Reworked>();
  for (const change of changes) {
    for (const approval of affectedBy(touchedBy(change), queries)) {
      if (lapsed.has(approval.id)) continue;
      const now = reworkedOnce(approval, at, queries, reworked);
      if (now.resultDigest === approval.resultDigest) continue;
      lapsed.set(approval.id, lapseOf(approval, change, now, at));
    }
  }
  return [...lapsed.values()];
}

function touchedBy(change: Change): Touched | undefined {
  const id = change.action === "remove" ? change.id : change.record.id;
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
      return change.action === "remove" ? "all" : { field: "bitId", id: change.record.bitId };
    case "dial-reading":
    case "collet":
      return change.action === "remove" ? "all" : { field: "routerId", id: change.record.routerId };
    default:
      return undefined;
  }
}

function affectedBy(touched: Touched | undefined, queries: GroundQueries): ApprovalRecord[] {
  if (touched === undefined) return [];
  return touched === "all" ? queries.inForce() : queries.inForceOn(touched.field, touched.id);
}

function reworkedOnce(
  { id, planId, courseId, woodIds, resultDigest }: ApprovalRecord,
  at: string,
  queries: GroundQueries,
  known: Map<string, Reworked>,
): Reworked {
  const alike = JSON.stringify([planId, courseId, woodIds, resultDigest]);
  const before = known.get(alike);
  if (before !== undefined) return before;
  const grounds = queries.groundsOf(id);
  const now: Reworked =
    grounds === undefined
      ? { resultDigest: undefined, setting: null, because: "What it was made from is gone." }
      : reworkedFrom(outcomeOn(queries.ground(grounds.request, woodIds, courseId, at)));
  known.set(alike, now);
  return now;
}

function reworkedFrom(outcome: Outcome): Reworked {
  if (outcome.kind === "may-not-run")
    return { resultDigest: undefined, setting: null, because: outcome.because };
  const { resultDigest, planned } = outcome;
  return { resultDigest, setting: settingOf(planned), because: "It would come out otherwise now." };
}

function lapseOf(approval: ApprovalRecord, change: Change, now: Reworked, at: string): Change {
  const { type: event, data } = change.event;
  const { before, after } = data;
  const lapse: Lapse = {
    at,
    because: `${now.because} What happened: ${event}.`,
    cause: {
      event,
      subjectId: change.action === "remove" ? change.id : change.record.id,
      ...(isObject(before) && { before }),
      ...(isObject(after) && { after }),
    },
    before: approval.setting,
    after: now.setting,
  };
  const record: ApprovalRecord = { ...nextVersion(approval, at), state: "lapsed", lapse };
  return replacement("approval", approval, record, "lapsed");
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}
