import type { PlanInput } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { keptFields } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { PlanAnswerSchema } from "../plans/answer-schema.ts";
import { PlanRequestSchema } from "../plans/schema.ts";
import { ApprovalSchema } from "./schema.ts";
import { SettingSchema } from "./setting-schema.ts";
import { KEPT_STATES } from "./states.ts";

const { state: _, lapse: __, ...shownAndKept } = ApprovalSchema.properties;

/** An approval as it is kept: why it lapsed is a record of its own, which serves all that lapsed alike. */
export const ApprovalRecordSchema = Type.Object({
  ...shownAndKept,
  state: Type.Enum([...KEPT_STATES], { type: "string", description: "How it stands, but for the time." }),
  lapseId: Type.Optional(Type.String({ description: "Why it lapsed." })),
  sheetsUntil: Type.Optional(
    Type.String({ description: "Until when sheets hold that were signed before it was cut short." }),
  ),
});

/** What events say of an approval: why it lapsed, too. */
export const ShownApprovalSchema = Type.Object({
  ...ApprovalRecordSchema.properties,
  reason: Type.String({ description: "Why it lapsed, as a sentence." }),
});

const Changed = Type.Object({}, { additionalProperties: true, description: "Its fields that matter." });

/** Why approvals no longer hold: what changed, and what the setting was and would be. */
export const LapseRecordSchema = Type.Object({
  id: Type.String({ description: "Its id." }),
  reason: Type.String({ description: "Why, as a sentence." }),
  cause: Type.Object(
    {
      event: Type.String({ description: "Type of the event." }),
      subjectId: Type.String({ description: "The record it happened to." }),
      before: Type.Optional(Changed),
      after: Type.Optional(Changed),
    },
    { description: "What changed." },
  ),
  before: ref(SettingSchema),
  /** Absent when nothing may be run now. */
  after: Type.Optional(ref(SettingSchema)),
  ...keptFields,
});

const ofApproval = {
  id: Type.String({ description: "Its id." }),
  approvalId: Type.String({ description: "The approval." }),
};

/** What events say of the grounds: their digest. */
export const ShownGroundsSchema = Type.Object({
  ...ofApproval,
  inputDigest: Type.String({ description: "Digest of what it was computed from." }),
});

/** Everything an approval was made from, and the result: a full copy that never changes. */
export const GroundsRecordSchema = Type.Object({
  ...ofApproval,
  request: ref(PlanRequestSchema),
  results: Type.Array(
    Type.Object({
      input: Type.Unsafe<PlanInput>({ type: "object" }),
      plan: ref(PlanAnswerSchema),
    }),
  ),
  ...keptFields,
});

export type ApprovalRecord = Static<typeof ApprovalRecordSchema>;
export type LapseRecord = Static<typeof LapseRecordSchema>;
export type GroundsRecord = Static<typeof GroundsRecordSchema>;

/** The setting that an approval approves, as short as a person compares it. */
export type ApprovedSetting = Static<typeof SettingSchema>;

/** As much of an approval in force as says whether it still holds: a change may touch a thousand of them. */
export type InForce = Pick<ApprovalRecord, "id" | "version" | "courseId" | "inputDigest" | "resultDigest">;

/** As much of an approval in force as says how long it holds. */
export type Lasting = Pick<ApprovalRecord, "id" | "version" | "validUntil" | "sheetsUntil">;
