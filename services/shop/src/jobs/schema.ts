import { PART_FIELDS, PIECES_RANGE } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { fieldSchema } from "../http/field-schema.ts";
import {
  externalIdField,
  idField,
  keptFields,
  momentField,
  nameField,
  notesField,
  orNull,
  patchSchema,
  referenceField,
} from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { Verdict } from "../plans/codes.ts";
import { PolicyLayerSchema } from "../policy/layer-schema.ts";
import { USE_OUTCOMES } from "../uses/schema.ts";
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

const outcomes = Type.Array(Type.Enum([...USE_OUTCOMES], { type: "string" }), {
  minItems: 1,
  maxItems: USE_OUTCOMES.length,
  uniqueItems: true,
  description: "What came out. `fine` stands alone.",
});

const MadeSchema = Type.Object(
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
        },
        closed,
      ),
      { description: "What was made at it." },
    ),
    outcomes,
    bitId: Type.String({ description: "The bit." }),
    useIds: Type.Array(Type.String(), { description: "The uses that were logged." }),
  },
  { $id: "JobSetupMade", description: "A set-up that was made, and what came out.", ...closed },
);

const kept = {
  id: idField("job"),
  ...jobFields,
  state: ref(JobState.schema),
  work: ref(JobWorkSchema),
  made: Type.Array(ref(MadeSchema), { description: "Set-ups that were made, oldest first." }),
};

export const JobSchema = Type.Object(
  {
    ...kept,
    ...keptFields,
  },
  { $id: "KeptJob", description: "A job as it is kept.", ...closed },
);

const ChangedGroundSchema = Type.Object(
  {
    bitId: Type.Optional(Type.String({ description: "The bit it is about." })),
    routerId: Type.Optional(Type.String({ description: "The router it is about." })),
    text: Type.String({ description: "What changed, as a sentence." }),
  },
  { $id: "JobGroundChange", description: "Something a job rests on that has changed.", ...closed },
);

export const ShownJobSchema = Type.Object(
  {
    ...JobSchema.properties,
    isCurrent: Type.Boolean({ description: "Whether what it was computed from is still so." }),
    changed: Type.Array(ref(ChangedGroundSchema), {
      description: "What is different since. Compute it again to follow it.",
    }),
  },
  { $id: "Job", description: "A job, and whether it still holds.", ...closed },
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

/** What events say of a job: what was computed is read from the job. */
export const JobEventFieldsSchema = Type.Object({
  ...Type.Omit(JobSchema, ["work", "parts"]).properties,
  verdict: ref(Verdict.schema),
  setups: orNull(Type.Integer(), "How many set-ups."),
});

export const JOB_SCHEMAS = [
  ...JOB_CODES.map(({ schema }) => schema),
  ...CUT_SCHEMAS,
  ...WORK_SCHEMAS,
  JobPartSchema,
  NewJobSchema,
  JobChangeSchema,
  MadeSchema,
  ChangedGroundSchema,
  ShownJobSchema,
  JobSummarySchema,
  JobPageSchema,
  SetupMadeSchema,
];

export type NewJob = Static<typeof NewJobSchema>;
export type JobPart = Static<typeof JobPartSchema>;
export type JobRecord = Static<typeof JobSchema>;
export type ShownJob = Static<typeof ShownJobSchema>;
export type JobSummary = Static<typeof JobSummarySchema>;
export type JobGroundChange = Static<typeof ChangedGroundSchema>;
export type SetupMade = Static<typeof SetupMadeSchema>;
export type SetupMadeRecord = Static<typeof MadeSchema>;
