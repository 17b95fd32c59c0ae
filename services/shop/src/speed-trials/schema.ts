import { BIT_RANGES, ROUTER_RANGES } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { idField, keptFields, momentField, notesField, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { MarkSchema } from "../routers/schema.ts";

const outcome = Type.Enum(["ran-free", "shook"], { type: "string", description: "What it did there." });
const rpm = Type.Number({ ...within(ROUTER_RANGES.rpm), description: "Speed it was tried at." });
const mark = Type.Optional(ref(MarkSchema));
const vibrationMmPerS = Type.Optional(
  Type.Number({
    minimum: 0,
    maximum: 200,
    description: "Vibration velocity measured on the housing, r.m.s. It decides the outcome.",
  }),
);
const runOutMm = Type.Optional(
  Type.Number({ ...within(BIT_RANGES.runOutMm), description: "Run-out measured for this trial." }),
);

export const NewTrialSchema = Type.Object(
  {
    bitId: referenceField("the bit"),
    routerId: referenceField("the router"),
    triedAt: Type.Optional(momentField("When it was tried; default: now.")),
    mark,
    rpm: Type.Optional(rpm),
    outcome: Type.Optional(outcome),
    vibrationMmPerS,
    runOutMm,
    notes: Type.Optional(notesField),
  },
  {
    $id: "NewSpeedTrial",
    description:
      "What a bit did at one speed in one router: its mark or its speed, and an outcome or a measured vibration.",
    additionalProperties: false,
  },
);

export const SetAsideSchema = Type.Object(
  {
    reason: Type.String({
      minLength: 3,
      maxLength: 300,
      pattern: "\\S",
      description: "Why it no longer counts, such as a new bearing.",
    }),
  },
  { $id: "SetAside", description: "Why a trial no longer counts.", additionalProperties: false },
);

export const TrialSchema = Type.Object(
  {
    id: idField("trial"),
    bitId: Type.String({ description: "The bit." }),
    routerId: Type.String({ description: "The router." }),
    personId: Type.Optional(referenceField("who tried")),
    triedAt: momentField("When it was tried."),
    mark,
    rpm,
    outcome,
    vibrationMmPerS,
    runOutMm,
    notes: Type.Optional(notesField),
    setAside: Type.Optional(
      Type.Object(
        { at: momentField("Since when."), reason: Type.String({ description: "Why." }) },
        { description: "It no longer counts.", additionalProperties: false },
      ),
    ),
    ...keptFields,
  },
  { $id: "SpeedTrial", description: "What was learned at one speed.", additionalProperties: false },
);

export const TrialPageSchema = pageSchema("SpeedTrialPage", ref(TrialSchema), "Speed trials, oldest first.");

/** The components this resource answers and takes, next to the proposal. */
export const TRIAL_SCHEMAS = [NewTrialSchema, SetAsideSchema, TrialSchema, TrialPageSchema];

export type NewTrial = Static<typeof NewTrialSchema>;

export type TrialRecord = Static<typeof TrialSchema>;
