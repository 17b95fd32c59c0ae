import type { Form } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { orNull, referenceField } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { Verdict } from "../plans/codes.ts";
import { MarkSchema } from "../routers/schema.ts";
import { ProfileNotTakenCode } from "./codes.ts";
import { ProfileShapeSchema } from "./shape-schema.ts";

const closed = { additionalProperties: false } as const;

const SearchMachineSchema = Type.Object(
  {
    routerId: referenceField("the router"),
    mounting: Type.Enum(["table", "handheld"], { type: "string", description: "How it is held." }),
    woodId: Type.String({ minLength: 1, maxLength: 100, description: "Id of a wood." }),
    lengthMm: Type.Optional(
      Type.Number({ minimum: 10, maximum: 10_000, description: "Length of the edge. Default: 1000 mm." }),
    ),
    widthMm: Type.Optional(
      Type.Number({ minimum: 5, maximum: 3000, description: "Width of the work. Default: 150 mm." }),
    ),
  },
  {
    $id: "ProfileMachine",
    description: "What a profile is to be made with and in: then each setting is planned.",
    ...closed,
  },
);

export const ProfileSearchSchema = Type.Object(
  {
    shape: Type.Optional(ref(ProfileShapeSchema)),
    profileId: Type.Optional(referenceField("a profile of the library instead of a shape")),
    toleranceMm: Type.Optional(
      Type.Number({
        minimum: 0.01,
        maximum: 5,
        description: "How far from its wall something may be left. Default: 0.2 mm.",
      }),
    ),
    setupsMax: Type.Optional(
      Type.Integer({
        minimum: 1,
        maximum: 4,
        description: "How many set-ups may make it together. Default: 3.",
      }),
    ),
    machine: Type.Optional(ref(SearchMachineSchema)),
  },
  { $id: "ProfileSearch", description: "A profile to find bits for.", ...closed },
);

const PlannedSchema = Type.Object(
  {
    verdict: ref(Verdict.schema),
    mark: orNull(ref(MarkSchema), "The mark to turn to; null without a dial, or if it must not be run."),
    rpm: orNull(Type.Integer(), "Nominal speed; null if it must not be run."),
    bindingLimit: orNull(Type.String(), "The limit that binds; null if it cannot be planned."),
    passes: Type.Integer({ description: "How many passes." }),
    seconds: Type.Number({ description: "How long a hand takes along the edge, all passes together." }),
    edgeUsedPercent: Type.Number({ description: "How much of the bit's edge is used, by estimate." }),
    text: Type.String({ description: "What weighs on it, as a sentence; empty if nothing does." }),
  },
  { $id: "ProfileSettingPlan", description: "What a plan for a setting comes to.", ...closed },
);

const SettingSchema = Type.Object(
  {
    bitId: Type.String({ description: "The bit." }),
    name: Type.String({ description: "Its name." }),
    work: Type.Enum(["flat", "standing"], { type: "string", description: "How the work lies." }),
    face: Type.Enum(["front", "back"], {
      type: "string",
      description: "Which face is down if it lies flat, or to the fence if it stands.",
    }),
    heightMm: Type.Number({ description: "How far the bit stands out of the table." }),
    fenceMm: Type.Number({ description: "The fence, in front of its axis." }),
    heightFromMm: Type.Number({ description: "The least height around it that is still within tolerance." }),
    heightToMm: Type.Number({ description: "The greatest." }),
    greatestLeftMm: Type.Number({ description: "What is left, at most, from the wanted wall." }),
    leftAt: Type.Object(
      {
        xMm: Type.Number({ description: "From the edge." }),
        zMm: Type.Number({ description: "From the front face." }),
      },
      { description: "Where that is.", ...closed },
    ),
    elsewhere: orNull(Type.String(), "Who has the bit or keeps it now; null if it is here."),
    plan: orNull(ref(PlannedSchema), "What its plan comes to; null if no machine was given."),
    text: Type.String({ description: "The setting as a sentence." }),
  },
  {
    $id: "ProfileSetting",
    description: "A bit set so that it makes the profile, or a part of it.",
    ...closed,
  },
);

export const ProfileFoundSchema = Type.Object(
  {
    oneSetup: Type.Array(ref(SettingSchema), {
      description: "Settings that make it at once, the best first.",
    }),
    together: Type.Array(Type.Array(ref(SettingSchema)), {
      description: "The fewest set-ups that make it together, the best first; none if one makes it alone.",
    }),
    notTaken: Type.Array(
      Type.Object(
        {
          bitId: Type.String({ description: "The bit." }),
          code: ref(ProfileNotTakenCode.schema),
          text: Type.String({ description: "Why, as a sentence." }),
        },
        closed,
      ),
      {
        description:
          "Bits that do not make it, each with why: the fifty that came nearest, the nearest first.",
      },
    ),
    toBuy: Type.Array(
      Type.Object(
        {
          form: Type.Unsafe<Form>({ $ref: "Form#" }),
          isStandard: Type.Boolean({ description: "Whether its sizes are among those that are sold." }),
          heightMm: Type.Number({ description: "How it would be set." }),
          fenceMm: Type.Number({ description: "And its fence." }),
          greatestLeftMm: Type.Number({ description: "What it would leave." }),
        },
        closed,
      ),
      { description: "Forms and sizes that would make it in one set-up, if nothing of the rack does." },
    ),
    isComplete: Type.Boolean({ description: "False if the search was cut short: more may be possible." }),
    looked: Type.Integer({ description: "How many bits were looked at." }),
  },
  { $id: "ProfileFound", description: "Which bits make a profile.", ...closed },
);

export const SEARCH_SCHEMAS = [
  ProfileNotTakenCode.schema,
  SearchMachineSchema,
  ProfileSearchSchema,
  PlannedSchema,
  SettingSchema,
  ProfileFoundSchema,
];

export type ProfileSearchAsked = Static<typeof ProfileSearchSchema>;
export type ProfileSettingShown = Static<typeof SettingSchema>;
export type ProfileSettingPlan = Static<typeof PlannedSchema>;
export type ProfileFound = Static<typeof ProfileFoundSchema>;
