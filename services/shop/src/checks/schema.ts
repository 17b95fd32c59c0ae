import Type, { type Static } from "typebox";
import { idField, keptFields, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";
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

const answered = {
  at: Type.String({ format: "date-time", description: "When this was decided." }),
  checkId: Type.Union([Type.String(), Type.Null()], {
    description: "Id of the kept check; null if it is not kept.",
  }),
};

const Allowed = Type.Object(
  {
    isAllowed: Type.Boolean({ const: true, description: "Only true is a yes. No answer is a no." }),
    reasons: Type.Array(ref(ReasonWhyNotSchema), { maxItems: 0, description: "None." }),
    approvalId: Type.String({ description: "The setting that allows it." }),
    supervision: Type.String({ description: "How closely somebody must watch." }),
    validUntil: Type.String({ format: "date-time", description: "Until when, if nothing changes." }),
    ...answered,
  },
  { $id: "CheckAllowed", description: "Yes.", ...closed },
);

const NotAllowed = Type.Object(
  {
    isAllowed: Type.Boolean({ const: false, description: "It is a no." }),
    reasons: Type.Array(ref(ReasonWhyNotSchema), { description: "Every reason why not." }),
    approvalId: Type.Union([Type.String(), Type.Null()], {
      description: "The setting that came nearest; null if none did.",
    }),
    supervision: Type.Null({ description: "Nothing may be run." }),
    validUntil: Type.Null({ description: "Nothing may be run." }),
    ...answered,
  },
  { $id: "CheckRefused", description: "No.", ...closed },
);

/** A yes or a no: one type to make it by, two to read it by. */
export type CheckAnswer = Omit<Static<typeof NotAllowed>, "supervision" | "validUntil"> & {
  supervision: string | null;
  validUntil: string | null;
};

export const CheckAnswerSchema = unionOf<CheckAnswer>(
  "CheckAnswer",
  "isAllowed",
  [Allowed, NotAllowed],
  "The answer to a check: a yes only if `isAllowed` is true.",
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
  Allowed,
  NotAllowed,
  CheckAnswerSchema,
  CheckSchema,
  CheckPageSchema,
];

export type CheckRequest = Static<typeof CheckRequestSchema>;

export type CheckRecord = Static<typeof CheckSchema>;
export type ReasonWhyNot = Static<typeof ReasonWhyNotSchema>;
