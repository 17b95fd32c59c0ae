import Type, { type Static } from "typebox";
import { NewApprovalSchema } from "../approvals/schema.ts";
import { momentField, referenceField } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { USE_OUTCOMES } from "../uses/schema.ts";
import { GroundChangeCode } from "./codes.ts";

const closed = { additionalProperties: false } as const;

const outcomes = Type.Array(Type.Enum([...USE_OUTCOMES], { type: "string" }), {
  minItems: 1,
  maxItems: USE_OUTCOMES.length,
  uniqueItems: true,
  description: "What came out. `fine` stands alone.",
});

export const MadeSchema = Type.Object(
  {
    setupId: Type.String({ description: "The set-up as it was numbered then." }),
    at: momentField("When."),
    by: Type.String({ description: "The key it was entered with." }),
    runs: Type.Array(
      Type.Object(
        {
          part: Type.Integer({ description: "Its part, from 1." }),
          cut: Type.Integer({ description: "Its cut in that part, from 1." }),
          pass: Type.Integer({ description: "Its pass, from 1." }),
          fenceMm: Type.Number({ description: "The fence it was made with." }),
        },
        closed,
      ),
      { description: "What was made at it." },
    ),
    outcomes,
    bitId: Type.String({ description: "The bit." }),
    heightMm: Type.Number({ description: "The height it was made at." }),
    rpm: Type.Integer({ description: "The speed it was made at." }),
    useIds: Type.Array(Type.String(), { description: "The uses that were logged." }),
  },
  { $id: "JobSetupMade", description: "A set-up that was made, and what came out.", ...closed },
);

export const ChangedGroundSchema = Type.Object(
  {
    code: ref(GroundChangeCode.schema),
    bitId: Type.Optional(Type.String({ description: "The bit it is about." })),
    routerId: Type.Optional(Type.String({ description: "The router it is about." })),
    text: Type.String({ description: "What changed, as a sentence." }),
  },
  { $id: "JobGroundChange", description: "Something a job rests on that has changed.", ...closed },
);

export const JobChangesSchema = Type.Object(
  {
    jobId: Type.String({ description: "The job." }),
    isCurrent: Type.Boolean({ description: "Whether everything it was computed from is still so." }),
    changed: Type.Array(ref(ChangedGroundSchema), {
      description: "What is different since. Compute it again to follow it.",
    }),
  },
  { $id: "JobChanges", description: "Whether a job still holds.", ...closed },
);

export const JobEndSchema = Type.Object(
  { as: Type.Enum(["done", "dropped"], { type: "string", description: "What became of it." }) },
  { $id: "JobEnd", description: "The end of a job.", ...closed },
);

export const JobApprovalsSchema = Type.Object(
  {
    courseId: referenceField("the course"),
    supervision: NewApprovalSchema.properties.supervision,
    skill: NewApprovalSchema.properties.skill,
    validFrom: NewApprovalSchema.properties.validFrom,
    validUntil: NewApprovalSchema.properties.validUntil,
  },
  { $id: "JobApprovals", description: "Settings to draft from all set-ups of a job.", ...closed },
);

export const JobApprovalsMadeSchema = Type.Object(
  {
    approvals: Type.Array(
      Type.Object(
        {
          approvalId: Type.String({ description: "The draft." }),
          planId: Type.String({ description: "The stored plan it was made from." }),
          name: Type.String({ description: "Its name." }),
        },
        closed,
      ),
      { description: "One for each bit, router and setting." },
    ),
  },
  { $id: "JobApprovalsMade", description: "The drafts that were made.", ...closed },
);

export const SetupMadeSchema = Type.Object(
  {
    setupId: Type.String({ maxLength: 100, description: "The set-up that was made, as the job numbers it." }),
    outcomes,
    minutes: Type.Optional(
      Type.Number({
        minimum: 0,
        maximum: 100_000,
        description: "How long the bit ran. Default: what was computed for cutting.",
      }),
    ),
  },
  { $id: "SetupMade", description: "A set-up that has been made.", ...closed },
);

/** The components of what is done to a job. */
export const ACT_SCHEMAS = [
  MadeSchema,
  ChangedGroundSchema,
  JobChangesSchema,
  SetupMadeSchema,
  JobEndSchema,
  JobApprovalsSchema,
  JobApprovalsMadeSchema,
];

export type JobChanges = Static<typeof JobChangesSchema>;
export type JobGroundChange = Static<typeof ChangedGroundSchema>;
export type JobApprovals = Static<typeof JobApprovalsSchema>;
export type JobApprovalsMade = Static<typeof JobApprovalsMadeSchema>;
export type SetupMade = Static<typeof SetupMadeSchema>;
export type SetupMadeRecord = Static<typeof MadeSchema>;
