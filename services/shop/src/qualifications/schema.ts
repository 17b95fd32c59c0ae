import Type, { type Static } from "typebox";
import { idField, keptFields, momentField, notesField, referenceField } from "../http/fields.ts";
import { manyCreatedSchema, manySchema } from "../http/many-schema.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

/** What can be on record of somebody (common practice of schools). */
export const QUALIFICATION_KINDS = [
  "safety-test",
  "demonstration",
  "parental-consent",
  "instruction",
] as const;

const shared = {
  personId: referenceField("the person"),
  courseId: Type.Optional(
    referenceField("the course it counts in; default: it is the shop's, and counts in every course"),
  ),
  kind: Type.Enum([...QUALIFICATION_KINDS], { type: "string", description: "What it is." }),
  skill: Type.Optional(
    Type.String({
      minLength: 1,
      maxLength: 60,
      pattern: "\\S",
      description: "What was shown, if a setting asks for it by name, such as large-bits.",
    }),
  ),
  scorePercent: Type.Optional(
    Type.Number({ minimum: 0, maximum: 100, description: "Score of a safety test; needed there." }),
  ),
  expiresAt: Type.Optional(momentField("Until when it counts; default: as long as courses accept it.")),
  notes: Type.Optional(notesField),
};

export const NewQualificationSchema = Type.Object(
  { ...shared, givenAt: Type.Optional(momentField("When it was given; default: now.")) },
  {
    $id: "NewQualification",
    description:
      "What somebody was tested on, showed or was allowed; signed by the person whose key enters it.",
    additionalProperties: false,
  },
);

export const QualificationSchema = Type.Object(
  {
    id: idField("qualification"),
    ...shared,
    givenAt: momentField("When it was given."),
    signedBy: Type.String({ description: "The person who signed." }),
    withdrawn: Type.Optional(
      Type.Object(
        { at: momentField("Since when."), reason: Type.String({ description: "Why." }) },
        { description: "It no longer counts.", additionalProperties: false },
      ),
    ),
    ...keptFields,
  },
  { $id: "Qualification", description: "Something on record of a person.", additionalProperties: false },
);

/** A safety test of the largest class. */
const MOST_NEW_QUALIFICATIONS = 200;

export const NewQualificationsSchema = manySchema(
  "NewQualifications",
  NewQualificationSchema,
  MOST_NEW_QUALIFICATIONS,
);
export const NewQualificationsAnswerSchema = manyCreatedSchema("CreatedQualifications", QualificationSchema);

export const QualificationPageSchema = pageSchema(
  "QualificationPage",
  ref(QualificationSchema),
  "Oldest entry first.",
);

/** The components this resource answers and takes. */
export const QUALIFICATION_SCHEMAS = [
  NewQualificationSchema,
  QualificationSchema,
  NewQualificationsSchema,
  NewQualificationsAnswerSchema,
  QualificationPageSchema,
];

export type NewQualification = Static<typeof NewQualificationSchema>;

export type QualificationRecord = Static<typeof QualificationSchema>;
