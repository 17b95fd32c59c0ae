import Type, { type Static } from "typebox";
import { idField, keptFields, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { MarkSchema } from "../routers/schema.ts";
import { ReasonWhyNotCode } from "./codes.ts";

const closed = { additionalProperties: false } as const;

const ReasonWhyNotSchema = Type.Object(
  {
    code: ref(ReasonWhyNotCode.schema),
    text: Type.String({ description: "The same as a sentence." }),
  },
  { $id: "ReasonWhyNot", description: "One reason why not.", ...closed },
);

export const CheckRequestSchema = Type.Object(
  {
    personId: referenceField("the person who wants to run it"),
    bitId: referenceField("the bit"),
    routerId: referenceField("the router"),
    mark: Type.Optional(ref(MarkSchema)),
    woodId: Type.Optional(referenceField("the wood; default: any that the setting is for")),
    mounting: Type.Optional(
      Type.Enum(["table", "handheld"], { type: "string", description: "How the router is held." }),
    ),
    isRecorded: Type.Optional(Type.Boolean({ description: "Whether to keep this check. Default: no." })),
  },
  {
    $id: "CheckRequest",
    description:
      "May this person run this bit on this router at this mark, now? Without a mark, the router must have no dial; then set the speed that the approval gives.",
    ...closed,
  },
);

export const CheckAnswerSchema = Type.Object(
  {
    isAllowed: Type.Boolean({ description: "Only true is a yes. No answer is a no." }),
    reasons: Type.Array(ref(ReasonWhyNotSchema), {
      description: "Every reason why not; empty if allowed.",
    }),
    approvalId: Type.Union([Type.String(), Type.Null()], {
      description: "The setting that allows it, or that came nearest.",
    }),
    supervision: Type.Union([Type.String(), Type.Null()], {
      description: "How closely somebody must watch; null if not allowed.",
    }),
    validUntil: Type.Union([Type.String({ format: "date-time" }), Type.Null()], {
      description: "Until when, if nothing changes; null if not allowed.",
    }),
    at: Type.String({ format: "date-time", description: "When this was decided." }),
    checkId: Type.Union([Type.String(), Type.Null()], {
      description: "Id of the kept check; null if it is not kept.",
    }),
  },
  { $id: "CheckAnswer", description: "The answer to a check.", ...closed },
);

export const CheckSchema = Type.Object(
  {
    id: idField("check"),
    personId: Type.String({ description: "Who asked to run it." }),
    bitId: Type.String({ description: "The bit." }),
    routerId: Type.String({ description: "The router." }),
    asked: Type.Object(
      {
        mark: Type.Optional(ref(MarkSchema)),
        woodId: Type.Optional(Type.String({ description: "The wood." })),
        mounting: Type.Optional(
          Type.Enum(["table", "handheld"], { type: "string", description: "How it is held." }),
        ),
      },
      { description: "What else was asked.", ...closed },
    ),
    isAllowed: Type.Boolean({ description: "What the answer was." }),
    reasons: Type.Array(ref(ReasonWhyNotSchema), { description: "Why not." }),
    approvalId: Type.Optional(Type.String({ description: "The setting it rested on." })),
    ...keptFields,
  },
  { $id: "Check", description: "A kept check.", ...closed },
);

export const CheckPageSchema = pageSchema("CheckPage", ref(CheckSchema), "Checks, oldest first.");

/** The components this resource answers and takes. */
export const CHECK_SCHEMAS = [
  ReasonWhyNotCode.schema,
  ReasonWhyNotSchema,
  CheckRequestSchema,
  CheckAnswerSchema,
  CheckSchema,
  CheckPageSchema,
];

export type CheckRequest = Static<typeof CheckRequestSchema>;
export type CheckAnswer = Static<typeof CheckAnswerSchema>;

export type CheckRecord = Static<typeof CheckSchema>;
export type ReasonWhyNot = Static<typeof ReasonWhyNotSchema>;
