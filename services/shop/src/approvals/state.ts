import type { APPROVAL_STATES, ApprovalRecord, LapseRecord } from "./approval.ts";

type State = (typeof APPROVAL_STATES)[number];

/** The state of a setting at a moment: one that was issued expires by itself. */
export function stateAt(
  { state, validUntil }: Pick<ApprovalRecord, "state" | "validUntil">,
  at: string,
): State {
  return state === "issued" && validUntil <= at ? "expired" : state;
}

/** A setting as it is told: with the state it has now, and why it lapsed where it did. */
export function shownApproval({ lapseId: _, ...record }: ApprovalRecord, at: string, lapse?: LapseRecord) {
  return { ...record, state: stateAt(record, at), ...(lapse && { lapse: shownLapse(lapse) }) };
}

function shownLapse({ because, cause, before, after, createdAt: at }: LapseRecord) {
  return { at, because, cause, before, after: after ?? null };
}
