import type { APPROVAL_STATES, ApprovalRecord } from "./approval.ts";

type State = (typeof APPROVAL_STATES)[number];

/** The state of a setting at a moment: one that was issued expires by itself. */
export function stateAt({ state, validUntil }: ApprovalRecord, at: string): State {
  return state === "issued" && validUntil <= at ? "expired" : state;
}

/** A setting as it is told: with the state it has now. */
export function shownApproval(
  record: ApprovalRecord,
  at: string,
): Omit<ApprovalRecord, "state"> & { state: State } {
  return { ...record, state: stateAt(record, at) };
}
