import type { Mark, Mounting, PlanInput } from "@rimwise/domain";
import type { PlanAnswer } from "../plans/answer-schema.ts";
import type { PlanRequest } from "../plans/schema.ts";
import type { Kept } from "../store/records.ts";

export const APPROVAL_STATES = ["draft", "issued", "lapsed", "expired", "withdrawn", "replaced"] as const;
export const SUPERVISION_LEVELS = ["beside", "in-the-room", "on-call"] as const;

/** What a setting comes to, as short as a person compares it. */
export type Setting = {
  readonly verdict: string;
  readonly dialMark: Mark | null;
  readonly rpm: number | null;
  readonly ceilingRpm: number;
  readonly bindingLimit: string;
  readonly clearance: string;
  readonly passes: {
    readonly woodId: string;
    readonly heightMm: number;
    readonly fenceMm: number;
    readonly feedMPerMin: number;
  }[];
  readonly findings: string[];
};

/** Why approvals no longer hold: what changed, and what the setting was and would be. One serves all that ended alike. */
export type LapseRecord = Kept & {
  readonly because: string;
  readonly cause: {
    readonly event: string;
    readonly subjectId: string;
    readonly before?: object;
    readonly after?: object;
  };
  readonly before: Setting;
  /** Left out where nothing may be run now. */
  readonly after?: Setting;
};

/** An approved setting. `expired` is never kept: it follows from the clock. */
export type ApprovalRecord = Kept & {
  readonly name: string;
  readonly courseId: string;
  readonly planId: string;
  readonly bitId: string;
  readonly routerId: string;
  readonly mounting: Mounting;
  readonly woodIds: string[];
  readonly personIds?: string[];
  readonly skill?: string;
  readonly supervision: (typeof SUPERVISION_LEVELS)[number];
  readonly validFrom: string;
  readonly validUntil: string;
  readonly state: Exclude<(typeof APPROVAL_STATES)[number], "expired">;
  readonly setting: Setting;
  readonly resultDigest: string;
  readonly inputDigest: string;
  readonly engineVersion: string;
  readonly draftedBy: string;
  readonly issuedAt?: string;
  readonly issuedBy?: string;
  readonly lapseId?: string;
  readonly withdrawal?: { readonly at: string; readonly because: string };
  readonly replacedById?: string;
  readonly replacesId?: string;
};

/** As much of a setting in force as tells whether it still holds: a change may touch a thousand of them. */
export type InForce = Pick<ApprovalRecord, "id" | "version" | "courseId" | "inputDigest" | "resultDigest">;

/** Everything an approval was made from, and what came out: a full copy that never changes. */
export type GroundsRecord = Kept & {
  readonly approvalId: string;
  readonly request: PlanRequest;
  readonly results: readonly { readonly input: PlanInput; readonly plan: PlanAnswer }[];
};
