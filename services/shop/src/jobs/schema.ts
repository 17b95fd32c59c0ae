import { PART_FIELDS, PIECES_RANGE } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { fieldSchema } from "../http/field-schema.ts";
import {
  externalIdField,
  idField,
  keptFields,
  nameField,
  notesField,
  type PatchOf,
  patchSchema,
  referenceField,
} from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { Verdict } from "../plans/codes.ts";
import { PolicyLayerSchema } from "../policy/layer-schema.ts";
import { ACT_SCHEMAS, MadeSchema } from "./act-schema.ts";
import { JOB_CODES, JobState } from "./codes.ts";
import { CUT_SCHEMAS, JobCutSchema, MachineSchema } from "./cut-schema.ts";
import { JobWorkSchema, MinutesSchema, WORK_SCHEMAS } from "./work-schema.ts";

const closed = { additionalProperties: false } as const;

/** What one request may ask for: a kitchen has a hundred parts. */
export const MOST_PARTS = 200;
export const MOST_CUTS_IN_PART = 12;
export const MOST_CUTS = 600;
const MOST_MACHINES = 8;

const size = (name: "lengthMm" | "widthMm" | "thicknessMm") =>
  Type.Unsafe<number>(fieldSchema(PART_FIELDS[name]));
const woodId = Type.String({
  minLength: 1,
  maxLength: 100,
  description: "Id of a wood, such as `black-cherry`.",
});
const day = (description: string) => Type.String({ format: "date", description });

export const JobPartSchema = Type.Object(
  {
    name: nameField("Rail, upper"),
    count: Type.Integer({ ...within(PIECES_RANGE), description: "How many are needed." }),
    spares: Type.Optional(
      Type.Integer({
        minimum: 0,
        maximum: 1000,
        description: "Cut beside them, against mistakes. Default: none.",
      }),
    ),
    lengthMm: size("lengthMm"),
    widthMm: size("widthMm"),
    thicknessMm: size("thicknessMm"),
    woodId: Type.Optional({ ...woodId, description: "Its wood, if it is another than the job's." }),
    cuts: Type.Array(ref(JobCutSchema), {
      maxItems: MOST_CUTS_IN_PART,
      description: "What is cut in each piece. The order of work is found, whatever their order here.",
    }),
  },
  { $id: "JobPart", description: "Pieces alike. Their grain runs along the length.", ...closed },
);

const jobFields = {
  name: nameField("Cherry kitchen, 24 doors"),
  externalId: Type.Optional(externalIdField),
  notes: Type.Optional(notesField),
  personId: Type.Optional(referenceField("who makes it; default: the one whose key asks")),
  courseId: Type.Optional(referenceField("the course that works on it")),
  startsOn: Type.Optional(day("The first day of work, in UTC. Needed to make it ready.")),
  wantedOn: Type.Optional(
    day("The day it is wanted: its bits are kept until then. Needed to make it ready."),
  ),
  woodId,
  machines: Type.Array(ref(MachineSchema), {
    minItems: 1,
    maxItems: MOST_MACHINES,
    description: "The routers it may be made with, as they are held. All of them stay set up at once.",
  }),
  setIn: Type.Optional(
    Type.Enum(["metric", "imperial"], {
      type: "string",
      description: "What heights and fences are set by. Default: metric.",
    }),
  ),
  policy: Type.Optional(ref(PolicyLayerSchema)),
  parts: Type.Array(ref(JobPartSchema), {
    minItems: 1,
    maxItems: MOST_PARTS,
    description: `The cut list: up to ${MOST_PARTS} parts, and ${MOST_CUTS} cuts in all.`,
  }),
};

export const NewJobSchema = Type.Object(jobFields, {
  $id: "NewJob",
  description: "A job to plan and keep: a whole cut list in one request.",
  ...closed,
});

export const JobChangeSchema = patchSchema<Static<typeof NewJobSchema>>(
  "JobChange",
  NewJobSchema,
  "What to change of a job in draft; it is computed again. A given field replaces the old one whole; null removes one that is optional.",
);

export const JobSchema = Type.Object(
  {
    id: idField("job"),
    ...jobFields,
    state: ref(JobState.schema),
    work: ref(JobWorkSchema),
    made: Type.Array(ref(MadeSchema), { description: "Set-ups that were made, oldest first." }),
    ...keptFields,
  },
  { $id: "Job", description: "A job as it was asked for and computed, and what was made of it.", ...closed },
);

export const JobSummarySchema = Type.Object(
  {
    id: idField("job"),
    name: jobFields.name,
    externalId: jobFields.externalId,
    personId: jobFields.personId,
    startsOn: jobFields.startsOn,
    wantedOn: jobFields.wantedOn,
    state: ref(JobState.schema),
    verdict: ref(Verdict.schema),
    parts: Type.Integer({ description: "How many parts." }),
    pieces: Type.Integer({ description: "How many pieces, spares among them." }),
    setups: Type.Integer({ description: "How many set-ups." }),
    made: Type.Integer({ description: "How many were made." }),
    minutes: ref(MinutesSchema),
    ...keptFields,
  },
  { $id: "JobSummary", description: "A job in short.", ...closed },
);

export const JobPageSchema = pageSchema("JobPage", ref(JobSummarySchema), "Jobs in short, oldest first.");

/** What events say of a job: what was computed is read from the job. */
export const JobEventFieldsSchema = Type.Omit(JobSchema, ["work"]);

export const JOB_SCHEMAS = [
  ...JOB_CODES.map(({ schema }) => schema),
  ...CUT_SCHEMAS,
  ...WORK_SCHEMAS,
  ...ACT_SCHEMAS,
  JobPartSchema,
  NewJobSchema,
  JobChangeSchema,
  JobSchema,
  JobSummarySchema,
  JobPageSchema,
];

export type NewJob = Static<typeof NewJobSchema>;
export type JobChange = PatchOf<NewJob>;
export type JobPart = Static<typeof JobPartSchema>;
export type JobRecord = Static<typeof JobSchema>;
export type JobSummary = Static<typeof JobSummarySchema>;
