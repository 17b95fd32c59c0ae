import type { ApprovalRecord, LapseRecord } from "./record-schema.ts";
import type { Approval } from "./schema.ts";

type State = Approval["state"];

/** The state of an approval at a moment: one that was issued expires by itself. */
export function stateAt(
  { state, validUntil }: Pick<ApprovalRecord, "state" | "validUntil">,
  at: string,
): State {
  return state === "issued" && validUntil <= at ? "expired" : state;
}

/** An approval as it is shown: with the state it has now, and why it lapsed if it did. */
export function shownApproval(
  { lapseId: _, sheetsUntil: __, ...record }: ApprovalRecord,
  at: string,
  lapse?: LapseRecord,
): Approval {
  return { ...record, state: stateAt(record, at), ...(lapse && { lapse: shownLapse(lapse) }) };
}

function shownLapse({ reason, cause, before, after, createdAt: at }: LapseRecord) {
  return { at, reason, cause, before, after: after ?? null };
}
