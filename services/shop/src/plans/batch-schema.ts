import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";
import { ProblemSchema } from "../problems/schema.ts";
import { PlanAnswerSchema, PlanPartsSchema } from "./answer-schema.ts";
import { Verdict } from "./codes.ts";
import { type PlanOrParts, wholeOrParts } from "./parts.ts";
import { PlanRequestSchema } from "./schema.ts";

const closed = { additionalProperties: false } as const;

/** Most plans one batch computes. */
export const MOST_IN_BATCH = 1000;

/** Most plans one shop table computes: bits × routers × woods. */
export const MOST_IN_TABLE = 10_000;

export const PlanBatchSchema = Type.Object(
  {
    requests: Type.Array(ref(PlanRequestSchema), {
      minItems: 1,
      maxItems: MOST_IN_BATCH,
      description: "Plans to compute, answered in this order.",
    }),
  },
  { $id: "PlanBatch", description: "Several plans to preview at once.", ...closed },
);

/** How many requests a batch holds, before any of them is looked at. */
export const BATCH_OUTLINE = Type.Object(
  { requests: Type.Array(Type.Object({}), { minItems: 1, maxItems: MOST_IN_BATCH }) },
  closed,
);

const Planned = Type.Object(
  {
    outcome: Type.Enum(["planned"], { type: "string", description: "It was computed." }),
    plan: ref(PlanAnswerSchema),
  },
  { $id: "PlannedResult", description: "A plan of a batch.", ...closed },
);

const Refused = Type.Object(
  {
    outcome: Type.Enum(["refused"], { type: "string", description: "It could not be computed." }),
    problem: ref(ProblemSchema),
  },
  { $id: "RefusedResult", description: "The problem with one request of a batch.", ...closed },
);

const BatchResult = unionOf<Static<typeof Planned> | Static<typeof Refused>>(
  "PlanBatchResult",
  "outcome",
  [Planned, Refused],
  "The plan, or the problem with that one request.",
);

export const PlanBatchAnswerSchema = Type.Object(
  { results: Type.Array(ref(BatchResult), { description: "One for each request, in its order." }) },
  { $id: "PlanBatchAnswer", description: "Each request's own plan or problem.", ...closed },
);

const ids = (what: string) =>
  Type.Array(Type.String({ minLength: 1, maxLength: 100 }), {
    minItems: 1,
    maxItems: 1000,
    uniqueItems: true,
    description: `Ids of ${what}, each once.`,
  });

const PartlyPlanned = Type.Object(
  { ...Planned.properties, plan: ref(PlanPartsSchema) },
  { $id: "PlannedPartsResult", description: "Parts of a plan of a batch.", ...closed },
);

const PartsResult = unionOf<Static<typeof PartlyPlanned> | Static<typeof Refused>>(
  "PlanPartsBatchResult",
  "outcome",
  [PartlyPlanned, Refused],
  "The parts of the plan that were asked for, or the problem with that one request.",
);

const PlanPartsBatchAnswerSchema = Type.Object(
  { results: Type.Array(ref(PartsResult), { description: "One for each request, in its order." }) },
  {
    $id: "PlanPartsBatchAnswer",
    description: "Parts of each request's plan, or its own problem.",
    ...closed,
  },
);

/** What a batch answers, with whole plans or parts of them. */
export const BatchOrPartsSchema = wholeOrParts<{ results: PlanOrPartsResult[] }>(
  "PlanBatchOrParts",
  PlanBatchAnswerSchema,
  PlanPartsBatchAnswerSchema,
);

export const ShopTableRequestSchema = Type.Object(
  {
    bitIds: ids("bits of the rack"),
    routerIds: ids("routers of the shop"),
    woodIds: ids("woods"),
    mounting: PlanRequestSchema.properties.mounting,
    policy: PlanRequestSchema.properties.policy,
  },
  {
    $id: "ShopTableRequest",
    description: `Every bit in every router in every wood, at most ${MOST_IN_TABLE} together: each bit's whole profile along an edge, or a groove a quarter of its diameter deep.`,
    ...closed,
  },
);

const ShopTableRow = Type.Object(
  {
    bitId: Type.String({ description: "The bit." }),
    routerId: Type.String({ description: "The router." }),
    woodId: Type.String({ description: "The wood." }),
    verdict: ref(Verdict.schema),
    reason: Type.Union([Type.String(), Type.Null()], {
      description: "What the verdict rests on most, as a sentence; null for a plain run.",
    }),
    ceilingRpm: Type.Union([Type.Integer(), Type.Null()], {
      description: "The least of the limits; null if the bit does not go into the router at all.",
    }),
    rpm: Type.Union([Type.Integer(), Type.Null()], {
      description: "Nominal speed; null if it must not be run.",
    }),
    mark: Type.Union([Type.Number(), Type.String(), Type.Null()], {
      description: "The mark; null without a dial or if it must not be run.",
    }),
    passes: Type.Integer({ description: "How many passes its whole profile takes." }),
  },
  { $id: "ShopTableRow", description: "One bit in one router in one wood.", ...closed },
);

export const ShopTableSchema = Type.Object(
  { rows: Type.Array(ref(ShopTableRow), { description: "By bit, then router, then wood, as asked." }) },
  { $id: "ShopTable", description: "Ceiling, mark and verdict of every combination.", ...closed },
);

/** The components of batches and tables. */
export const BATCH_SCHEMAS = [
  PlanBatchSchema,
  Planned,
  Refused,
  BatchResult,
  PlanBatchAnswerSchema,
  PartlyPlanned,
  PartsResult,
  PlanPartsBatchAnswerSchema,
  BatchOrPartsSchema,
  ShopTableRequestSchema,
  ShopTableRow,
  ShopTableSchema,
];

export type PlanBatch = Static<typeof PlanBatchSchema>;

/** What one request of a batch came to. */
export type PlanOrPartsResult = Static<typeof Refused> | { outcome: "planned"; plan: PlanOrParts };
export type ShopTableRequest = Static<typeof ShopTableRequestSchema>;
export type ShopTable = Static<typeof ShopTableSchema>;
