import Type, { type Static } from "typebox";
import { RequirementsSchema } from "../courses/schema.ts";
import { idField, keptFields, momentField, nameField, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { PlanAnswerSchema } from "../plans/answer-schema.ts";
import { PlanRequestSchema } from "../plans/schema.ts";
import { SettingSchema } from "./setting-schema.ts";
import { APPROVAL_STATES, SUPERVISION_LEVELS } from "./states.ts";

const closed = { additionalProperties: false } as const;

const conditions = {
  personIds: Type.Optional(
    Type.Array(Type.String({ minLength: 1, maxLength: 100 }), {
      minItems: 1,
      maxItems: 500,
      uniqueItems: true,
      description: "Only for these students. Default: for every student of the course.",
    }),
  ),
  skill: Type.Optional(
    Type.String({
      minLength: 1,
      maxLength: 60,
      description: "Only for those who showed this, such as large-bits.",
    }),
  ),
  supervision: Type.Enum([...SUPERVISION_LEVELS], {
    type: "string",
    description: "How closely somebody must watch.",
  }),
};

export const NewApprovalSchema = Type.Object(
  {
    name: nameField("Door panels in cherry, table 1"),
    courseId: referenceField("the course"),
    planId: referenceField("the stored plan"),
    woodIds: Type.Optional(
      Type.Array(Type.String({ minLength: 1, maxLength: 100 }), {
        maxItems: 20,
        uniqueItems: true,
        description: "Other woods it is for as well; each is planned for.",
      }),
    ),
    ...conditions,
    validFrom: Type.Optional(momentField("From when; default: now.")),
    validUntil: momentField("Until when, at most two years."),
  },
  { $id: "NewApproval", description: "A setting to draft from a stored plan.", ...closed },
);

const LapseSchema = Type.Object(
  {
    at: momentField("When."),
    reason: Type.String({ description: "What changed." }),
    cause: Type.Object(
      {
        event: Type.String({ description: "The event, such as bit.sharpened." }),
        subjectId: Type.String({ description: "The record it happened to." }),
        before: Type.Optional(
          Type.Unsafe<object>({
            type: "object",
            additionalProperties: true,
            description: "Its changed fields before.",
          }),
        ),
        after: Type.Optional(
          Type.Unsafe<object>({
            type: "object",
            additionalProperties: true,
            description: "Its changed fields after.",
          }),
        ),
      },
      { description: "What it was.", ...closed },
    ),
    before: ref(SettingSchema),
    after: Type.Union([ref(SettingSchema), Type.Null()], {
      description: "What it would be now; null if nothing may be run.",
    }),
  },
  { $id: "Lapse", description: "Why a setting no longer holds, before and after.", ...closed },
);

const ended = Type.Object(
  { at: momentField("When."), reason: Type.String({ description: "Why." }) },
  { description: "It was withdrawn.", ...closed },
);

export const ApprovalSchema = Type.Object(
  {
    id: idField("approval"),
    name: nameField("Door panels in cherry, table 1"),
    courseId: Type.String({ description: "The course." }),
    planId: Type.String({ description: "The plan it was made from." }),
    bitId: Type.String({ description: "The bit." }),
    routerId: Type.String({ description: "The router." }),
    mounting: Type.Enum(["table", "handheld"], { type: "string", description: "How the router is held." }),
    woodIds: Type.Array(Type.String(), { description: "The woods it is for." }),
    ...conditions,
    validFrom: momentField("From when."),
    validUntil: momentField("Until when; not longer than the readings it rests on."),
    state: Type.Enum([...APPROVAL_STATES], {
      type: "string",
      description: "Only `issued` may be relied on.",
    }),
    setting: ref(SettingSchema),
    resultDigest: Type.String({
      description: "Fingerprint of what decides: verdict, clearance, mark, speeds, passes and precautions.",
    }),
    inputDigest: Type.String({ description: "Fingerprint of everything it was computed from." }),
    engineVersion: Type.String({ description: "Version of the computation." }),
    draftedBy: Type.String({ description: "Who drafted it." }),
    isTwoPerson: Type.Boolean({
      description: "Whether the course asked for two persons when it was drafted: then it goes on doing so.",
    }),
    requirements: ref(RequirementsSchema),
    issuedAt: Type.Optional(momentField("When it was issued.")),
    issuedBy: Type.Optional(Type.String({ description: "Who issued it." })),
    lapse: Type.Optional(ref(LapseSchema)),
    withdrawal: Type.Optional(ended),
    replacedById: Type.Optional(Type.String({ description: "The one issued in its place." })),
    replacesId: Type.Optional(Type.String({ description: "The one it was issued in place of." })),
    ...keptFields,
  },
  { $id: "Approval", description: "An approved setting.", ...closed },
);

export const GroundsSchema = Type.Object(
  {
    approvalId: Type.String({ description: "The setting." }),
    request: ref(PlanRequestSchema),
    results: Type.Array(
      Type.Object(
        {
          input: Type.Unsafe<object>({
            type: "object",
            additionalProperties: true,
            description: "Everything that went in, in full precision.",
          }),
          plan: ref(PlanAnswerSchema),
        },
        closed,
      ),
      { description: "One for each wood." },
    ),
    digest: Type.String({ description: "The same as the setting's inputDigest." }),
    engineVersion: Type.String({ description: "Version of the computation." }),
  },
  { $id: "Grounds", description: "What a setting was made from, whole.", ...closed },
);

export const DifferenceSchema = Type.Object(
  {
    approvalId: Type.String({ description: "The setting." }),
    isSame: Type.Boolean({ description: "Whether the result would be the same." }),
    before: ref(SettingSchema),
    after: Type.Union([ref(SettingSchema), Type.Null()], {
      description: "What it would be now; null if nothing may be run.",
    }),
    inWords: Type.Array(Type.String(), {
      description:
        "The difference in sentences, what to set first; empty when only remarks differ in detail.",
    }),
    differing: Type.Array(
      Type.Object(
        {
          woodId: Type.String({ description: "In the plan for this wood." }),
          pointer: Type.String({ description: "JSON Pointer (RFC 6901) into the plan." }),
          before: Type.Optional(
            Type.Unknown({ description: "What the plan says there; absent if nothing." }),
          ),
          after: Type.Optional(Type.Unknown({ description: "What it would say now; absent if nothing." })),
        },
        closed,
      ),
      { description: "Every value of the plan that would be different." },
    ),
    reason: Type.Union([Type.String(), Type.Null()], {
      description: "Why nothing may be run; null if something may.",
    }),
    resultDigest: Type.Union([Type.String(), Type.Null()], {
      description: "Send it to re-issue: it says that this difference was seen.",
    }),
  },
  { $id: "ApprovalDifference", description: "A setting as it is and as it would be.", ...closed },
);

export const ReissueSchema = Type.Object(
  {
    resultDigest: Type.String({
      minLength: 1,
      maxLength: 100,
      description: "The `resultDigest` of the difference that was seen.",
    }),
    validUntil: Type.Optional(momentField("Until when; default: unchanged.")),
  },
  { $id: "Reissue", description: "A setting to issue again after its difference was seen.", ...closed },
);

export const ApprovalPageSchema = pageSchema("ApprovalPage", ref(ApprovalSchema), "Settings, oldest first.");

/** The components this resource answers and takes. */
export const APPROVAL_SCHEMAS = [
  NewApprovalSchema,
  SettingSchema,
  LapseSchema,
  ApprovalSchema,
  GroundsSchema,
  DifferenceSchema,
  ReissueSchema,
  ApprovalPageSchema,
];

export type NewApproval = Static<typeof NewApprovalSchema>;
export type Reissue = Static<typeof ReissueSchema>;
export type Difference = Static<typeof DifferenceSchema>;
export type Approval = Static<typeof ApprovalSchema>;
