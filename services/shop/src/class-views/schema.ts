import Type, { type Static } from "typebox";
import { ApprovalSchema } from "../approvals/schema.ts";
import { ref } from "../http/reference.ts";
import { MissingCode } from "../qualifications/codes.ts";
import { QualificationSchema } from "../qualifications/schema.ts";
import { USE_OUTCOMES } from "../uses/schema.ts";

const closed = { additionalProperties: false } as const;

const MissingSchema = Type.Object(
  {
    code: ref(MissingCode.schema),
    text: Type.String({ description: "The same as a sentence." }),
  },
  { $id: "Missing", description: "One thing that somebody still needs.", ...closed },
);

export const TodaySchema = Type.Object(
  {
    courseId: Type.String({ description: "The course." }),
    personId: Type.String({ description: "The student." }),
    missing: Type.Array(ref(MissingSchema), {
      description: "What they still need; with anything missing nothing may be run.",
    }),
    settings: Type.Array(ref(ApprovalSchema), { description: "What they may run today." }),
  },
  { $id: "Today", description: "What a student may do today.", ...closed },
);

export const NeedsSchema = Type.Object(
  {
    data: Type.Array(
      Type.Object(
        {
          personId: Type.String({ description: "The student." }),
          name: Type.String({ description: "Their name." }),
          missing: Type.Array(ref(MissingSchema), { description: "What they still need." }),
        },
        closed,
      ),
      { description: "Every student who needs something." },
    ),
    isComplete: Type.Boolean({
      description: "False if the course has more students than one answer looks at.",
    }),
  },
  { $id: "Needs", description: "Who in a course still needs what.", ...closed },
);

export const EndingSchema = Type.Object(
  {
    settings: Type.Array(ref(ApprovalSchema), {
      description: "Settings in force that end by then, the first to end first.",
    }),
    qualifications: Type.Array(ref(QualificationSchema), {
      description: "Qualifications of students that end by then.",
    }),
  },
  { $id: "Ending", description: "What runs out soon.", ...closed },
);

export const UsageSchema = Type.Object(
  {
    data: Type.Array(
      Type.Object(
        {
          bitId: Type.String({ description: "The bit." }),
          uses: Type.Integer({ description: "How often." }),
          metres: Type.Number({ description: "Metres cut." }),
          minutes: Type.Number({ description: "Minutes run." }),
          outcomes: Type.Object(
            Object.fromEntries(
              USE_OUTCOMES.map((outcome) => [
                outcome,
                Type.Integer({ description: `How often: ${outcome}.` }),
              ]),
            ),
            { description: "What happened.", ...closed },
          ),
        },
        closed,
      ),
      { description: "Bits the students used, the most used first." },
    ),
  },
  { $id: "Usage", description: "What a class used.", ...closed },
);

/** The components of what a class sees of itself. */
export const VIEW_SCHEMAS = [
  MissingCode.schema,
  MissingSchema,
  TodaySchema,
  NeedsSchema,
  EndingSchema,
  UsageSchema,
];

export type Usage = Static<typeof UsageSchema>;
