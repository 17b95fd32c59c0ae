import Type, { type Static } from "typebox";
import { idField, keptFields, momentField, referenceField } from "../http/fields.ts";
import { manyCreatedSchema, manySchema } from "../http/many-schema.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

const enrolmentFields = {
  personId: referenceField("the person"),
  part: Type.Enum(["instructor", "student"], { type: "string", description: "What they do there." }),
};

export const NewEnrolmentSchema = Type.Object(enrolmentFields, {
  $id: "NewEnrolment",
  description: "Somebody who joins a course.",
  additionalProperties: false,
});

export const EnrolmentSchema = Type.Object(
  {
    id: idField("enrolment"),
    courseId: Type.String({ description: "The course." }),
    ...enrolmentFields,
    endedAt: Type.Optional(momentField("When they left it.")),
    ...keptFields,
  },
  { $id: "Enrolment", description: "A person's part in a course.", additionalProperties: false },
);

/** A school year's largest courses. */
const MOST_NEW_ENROLMENTS = 200;

export const NewEnrolmentsSchema = manySchema("NewEnrolments", NewEnrolmentSchema, MOST_NEW_ENROLMENTS);
export const NewEnrolmentsAnswerSchema = manyCreatedSchema("CreatedEnrolments", EnrolmentSchema);

export const EnrolmentPageSchema = pageSchema("EnrolmentPage", ref(EnrolmentSchema), "Oldest first.");

/** The components this resource answers and takes. */
export const ENROLMENT_SCHEMAS = [
  NewEnrolmentSchema,
  EnrolmentSchema,
  NewEnrolmentsSchema,
  NewEnrolmentsAnswerSchema,
  EnrolmentPageSchema,
];

export type NewEnrolment = Static<typeof NewEnrolmentSchema>;

/** A person's part in a course. */
export type EnrolmentRecord = Static<typeof EnrolmentSchema>;
