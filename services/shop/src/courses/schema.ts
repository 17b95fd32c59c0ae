import Type, { type Static } from "typebox";
import {
  idField,
  keptFields,
  momentField,
  nameField,
  notesField,
  type PatchOf,
  patchSchema,
} from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { PolicyLayerSchema } from "../policy/layer-schema.ts";

export type Requirements = {
  readonly safetyTest?: { readonly passPercent: number };
  readonly isDemonstrationNeeded?: boolean;
  readonly isParentalConsentNeeded?: boolean;
  readonly instructionMaxAgeDays?: number;
};

const closed = { additionalProperties: false } as const;

export const RequirementsSchema = Type.Object(
  {
    safetyTest: Type.Optional(
      Type.Object(
        {
          passPercent: Type.Number({
            minimum: 50,
            maximum: 100,
            description: "Least score that passes; many schools ask for 100 (common practice).",
          }),
        },
        { description: "A written safety test.", ...closed },
      ),
    ),
    isDemonstrationNeeded: Type.Optional(
      Type.Boolean({ description: "Whether each must have shown a bit change and a depth setting." }),
    ),
    isParentalConsentNeeded: Type.Optional(
      Type.Boolean({ description: "Whether a parent must have signed." }),
    ),
    instructionMaxAgeDays: Type.Optional(
      Type.Integer({
        minimum: 1,
        maximum: 3650,
        description: "An instruction on record, no older than this: once a year is common (365).",
      }),
    ),
  },
  { $id: "Requirements", description: "What a student needs before anything may be run.", ...closed },
);

const courseFields = {
  name: nameField("Cabinetmaking, first year"),
  notes: Type.Optional(notesField),
  policy: ref(PolicyLayerSchema),
  requirements: ref(RequirementsSchema),
  isTwoPerson: Type.Boolean({
    description:
      "Whether who drafts a setting must not issue it. Only a manager switches it off, and never for what is drafted already.",
  }),
  endsAt: Type.Optional(momentField("When it ends; nothing of it holds longer.")),
};

export const NewCourseSchema = Type.Object(courseFields, {
  $id: "NewCourse",
  description: "A course to set up. Its policy tightens the shop's, never loosens it.",
  ...closed,
});

export const CourseChangeSchema = patchSchema<Static<typeof NewCourseSchema>>(
  "CourseChange",
  NewCourseSchema,
  "What to change of a course. Settings whose plan changes under its new policy lapse.",
);

export const CourseSchema = Type.Object(
  { id: idField("course"), ...courseFields, ...keptFields },
  { $id: "Course", description: "A course.", ...closed },
);

export const CoursePageSchema = pageSchema("CoursePage", ref(CourseSchema), "Courses, oldest first.");

/** The components this resource answers and takes. */
export const COURSE_SCHEMAS = [
  RequirementsSchema,
  NewCourseSchema,
  CourseChangeSchema,
  CourseSchema,
  CoursePageSchema,
];

export type NewCourse = Static<typeof NewCourseSchema>;
export type CourseChange = PatchOf<Static<typeof NewCourseSchema>>;

/** A course: what it asks of its students, and what it tightens for them. */
export type CourseRecord = Static<typeof CourseSchema>;
