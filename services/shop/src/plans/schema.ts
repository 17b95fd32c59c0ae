import { CUTS, ROUTER_RANGES } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { BitInputSchema } from "../bits/schema.ts";
import { externalIdField, idField, keptFields, nameField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { PolicyLayerSchema } from "../policy/layer-schema.ts";
import { MarkSchema, RouterInputSchema } from "../routers/schema.ts";
import { ANSWER_SCHEMAS, PlanAnswerSchema, PlanPartsSchema } from "./answer-schema.ts";
import { Verdict } from "./codes.ts";
import { CUT_SCHEMAS, CutSchema } from "./cut-schema.ts";
import { FieldsQuery, type PlanOrParts, PlanOrPartsSchema, wholeOrParts } from "./parts.ts";
import { CorrectionSchema, CutAtSchema, TestPieceSchema } from "./test-piece-schema.ts";

const closed = { additionalProperties: false } as const;

export const RecordReferenceSchema = Type.Object(
  { id: Type.String({ minLength: 1, maxLength: 100, description: "Id of a record that is kept here." }) },
  { $id: "RecordReference", description: "A kept record, by its id.", ...closed },
);

export const SpeedTrialSchema = Type.Object(
  {
    rpm: Type.Number({ ...within(ROUTER_RANGES.rpm), description: "Speed it was tried at." }),
    outcome: Type.Enum(["ran-free", "shook"], { type: "string", description: "What it did there." }),
    isSameRouter: Type.Boolean({ description: "Whether it was in the router the plan is for." }),
  },
  { $id: "KnownTrial", description: "What was learned by running a bit at one speed.", ...closed },
);

const requestFields = {
  bit: Type.Union([ref(RecordReferenceSchema), ref(BitInputSchema)], {
    description: "A bit of the rack by its id, or one described here.",
  }),
  router: Type.Union([ref(RecordReferenceSchema), ref(RouterInputSchema)], {
    description: "A router of the shop by its id, or one described here.",
  }),
  mounting: Type.Enum(["table", "handheld"], { type: "string", description: "How the router is held." }),
  woodId: Type.String({ minLength: 1, maxLength: 100, description: "Id of a wood, such as `black-cherry`." }),
  cut: ref(CutSchema),
  policy: Type.Optional(ref(PolicyLayerSchema)),
  setIn: Type.Optional(
    Type.Enum(["metric", "imperial"], {
      type: "string",
      description:
        "What heights and fences are set by: rough passes come out in steps of 0.1 mm or of 1/64 in, on the lighter side. Default: what `units` asks for, else metric.",
    }),
  ),
  trials: Type.Optional(
    Type.Array(ref(SpeedTrialSchema), { maxItems: 200, description: "Speed trials of this bit." }),
  ),
};

export const PlanRequestSchema = Type.Object(requestFields, {
  $id: "PlanRequest",
  description: "Everything a plan is computed from.",
  ...closed,
});

export const CorrectionRequestSchema = Type.Object(
  { ...requestFields, measured: ref(TestPieceSchema), cutAt: Type.Optional(ref(CutAtSchema)) },
  {
    $id: "CorrectionRequest",
    description: "A plan's request, and what was measured on its test piece.",
    ...closed,
  },
);

export const NewPlanSchema = Type.Object(
  {
    name: Type.Optional(nameField("Cherry panels, kitchen doors")),
    externalId: Type.Optional(externalIdField),
    ...requestFields,
  },
  { $id: "NewPlan", description: "A plan to compute and keep.", ...closed },
);

/** A setting that so many test pieces do not put right is another fault. */
export const MOST_CORRECTIONS = 50;

export const StoredPlanSchema = Type.Object(
  {
    id: idField("plan"),
    name: Type.Optional(nameField("Cherry panels, kitchen doors")),
    externalId: Type.Optional(externalIdField),
    request: ref(PlanRequestSchema),
    plan: ref(PlanAnswerSchema),
    corrections: Type.Optional(
      Type.Array(ref(CorrectionSchema), {
        maxItems: MOST_CORRECTIONS,
        description: "What test pieces showed, oldest first; the last setting is the one to use.",
      }),
    ),
    ...keptFields,
  },
  {
    $id: "StoredPlan",
    description:
      "A plan as it was computed, with what was asked for: that never changes. Corrections are added to it.",
    ...closed,
  },
);

/** What events say of a stored plan: what was computed never changes, and its digest stands for it. */
export const ShownPlanSchema = Type.Object({
  ...Type.Pick(StoredPlanSchema, ["id", "corrections", "version", "createdAt", "updatedAt"]).properties,
  digest: Type.String({ description: "Digest of the plan." }),
  verdict: ref(Verdict.schema),
});

const StoredPlanPartsSchema = Type.Object(
  { ...StoredPlanSchema.properties, plan: ref(PlanPartsSchema) },
  {
    $id: "StoredPlanParts",
    description: "A stored plan with those fields of the plan that were asked for.",
    ...closed,
  },
);

/** A stored plan, whole or with parts of the plan. */
export const StoredPlanOrPartsSchema = wholeOrParts<Omit<PlanRecord, "plan"> & { plan: PlanOrParts }>(
  "StoredPlanOrParts",
  StoredPlanSchema,
  StoredPlanPartsSchema,
);

/** A stored plan in a list: enough to find the one that is meant. The whole of it is read by its id. */
export const PlanSummarySchema = Type.Object(
  {
    id: idField("plan"),
    name: Type.Optional(nameField("Cherry panels, kitchen doors")),
    externalId: Type.Optional(externalIdField),
    bitId: Type.Optional(Type.String({ description: "The bit, if it is one of the rack." })),
    routerId: Type.Optional(Type.String({ description: "The router, if it is one of the shop." })),
    mounting: requestFields.mounting,
    woodId: requestFields.woodId,
    cutKind: Type.String({ description: "The kind of cut." }),
    verdict: ref(Verdict.schema),
    mark: Type.Union([ref(MarkSchema), Type.Null()], {
      description: "The mark to turn to; null without a dial, or when the verdict is do-not-run.",
    }),
    rpm: Type.Union([Type.Integer(), Type.Null()], {
      description: "Nominal speed to run at; null when the verdict is do-not-run.",
    }),
    passes: Type.Integer({ description: "How many passes it takes." }),
    ...keptFields,
  },
  { $id: "PlanSummary", description: "A stored plan in short.", ...closed },
);

export const PlanPageSchema = pageSchema("PlanPage", ref(PlanSummarySchema), "Plans in short, oldest first.");

const cutKinds = CUTS.map(({ kind }) => kind);

/** What stored plans are found by, beside their names. */
export const PLAN_FILTERS = {
  bitId: "Plans for this bit of the rack.",
  routerId: "Plans for this router of the shop.",
  woodId: "Plans in this wood.",
  cutKind: Type.Optional(Type.Enum(cutKinds, { type: "string", description: "Plans of this kind of cut." })),
  verdict: Type.Optional(
    Type.Enum(Verdict.schema.enum, { type: "string", description: "Plans with this verdict." }),
  ),
};

const units = Type.Optional(
  Type.Enum(["metric", "imperial"], {
    type: "string",
    description: "Adds `display` texts in these units, and writes the sentences in them alone.",
  }),
);

export const UnitsQuery = Type.Object({ units }, closed);

export const PlanQuery = Type.Object(
  {
    units,
    profiles: Type.Optional(
      Type.Boolean({ description: "Adds the cross-section of the work after each pass as polygons." }),
    ),
    ...FieldsQuery,
  },
  closed,
);

export const StoredPlanQuery = Type.Object(FieldsQuery, closed);

/** The components this resource answers and takes. */
export const PLAN_SCHEMAS = [
  RecordReferenceSchema,
  SpeedTrialSchema,
  BitInputSchema,
  RouterInputSchema,
  PolicyLayerSchema,
  ...CUT_SCHEMAS,
  ...ANSWER_SCHEMAS,
  CutAtSchema,
  CorrectionSchema,
  PlanRequestSchema,
  CorrectionRequestSchema,
  NewPlanSchema,
  PlanOrPartsSchema,
  StoredPlanSchema,
  StoredPlanPartsSchema,
  StoredPlanOrPartsSchema,
  PlanSummarySchema,
  PlanPageSchema,
];

export type PlanRequest = Static<typeof PlanRequestSchema>;
export type NewPlan = Static<typeof NewPlanSchema>;
export type PlanQueryType = Static<typeof PlanQuery>;

/** A stored plan in short. */
export type PlanSummary = Static<typeof PlanSummarySchema>;

/** A plan that is kept, with what was asked for. */
export type PlanRecord = Static<typeof StoredPlanSchema>;
