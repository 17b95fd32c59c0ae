/** What the shop must be like, by the acts that were answered: an account of its own, which shares no code with the service. */
export type Model = {
  nowMs: number;
  readonly bits: ModelBit[];
  readonly loans: ModelLoan[];
  readonly approvals: ModelApproval[];
  /** Who learns in which course: `course person`. */
  readonly enrolled: Map<string, string>;
};

export type ModelBit = {
  readonly id: string;
  /** The short number that the shop knows it by. */
  readonly number: number;
  version: number;
  massG: number;
  loanId: string | undefined;
  hold: { readonly sinceMs: number; readonly inspectionId?: string } | undefined;
  isRetired: boolean;
  readonly inspections: { readonly id: string; readonly atMs: number; readonly effect: string }[];
  /** How often something changed that a plan with it may rest on. */
  changes: number;
};

export type ModelLoan = {
  readonly id: string;
  readonly bitId: string;
  readonly personId: string;
  isOut: boolean;
};

export type ModelApproval = {
  readonly id: string;
  readonly courseId: string;
  readonly planId: string;
  readonly bitId: string;
  readonly routerId: string;
  readonly mark: number | string | null;
  readonly rpm: number;
  readonly validFromMs: number;
  readonly validUntilMs: number;
  state: "draft" | "issued" | "lapsed" | "withdrawn";
  /** The bit's changes when it was last known to hold. */
  bitChanges: number;
};

/** An approval as it was answered when it was drafted or issued. */
export function approvalFrom(
  // biome-ignore lint/suspicious/noExplicitAny: whoever sent the request has looked at the status.
  { id, state, courseId, setting, validFrom, validUntil }: any,
  plan: { readonly id: string; readonly bitId: string; readonly routerId: string },
  bitChanges: number,
): ModelApproval {
  return {
    ...{ id, state, courseId, bitChanges, planId: plan.id, bitId: plan.bitId, routerId: plan.routerId },
    ...{ mark: setting.mark, rpm: setting.rpm },
    ...{ validFromMs: Date.parse(validFrom), validUntilMs: Date.parse(validUntil) },
  };
}

/** A copy that can be tried out. */
export function copyOf(model: Model): Model {
  return structuredClone(model);
}

/** What bits, loans and approvals have: an id to be found by. */
export function found<Row extends { readonly id: string }>(rows: readonly Row[], id: string): Row {
  const row = rows.find((each) => each.id === id);
  if (row === undefined) throw new Error(`the model has no ${id}`);
  return row;
}

/** The loan that a bit is out on. */
export function loanOf(model: Model, { loanId }: ModelBit): ModelLoan | undefined {
  return loanId === undefined ? undefined : found(model.loans, loanId);
}

/** Whether an approval holds at the model's moment. */
export function isInForce({ nowMs }: Model, { state, validFromMs, validUntilMs }: ModelApproval): boolean {
  return state === "issued" && validFromMs <= nowMs && nowMs < validUntilMs;
}

/** Whether a bit may be used by anybody. */
export function isUsable({ hold, isRetired }: ModelBit): boolean {
  return hold === undefined && !isRetired;
}
