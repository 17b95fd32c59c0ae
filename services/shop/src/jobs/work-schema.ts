import Type, { type Static } from "typebox";
import { orNull } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { GuideCode, Severity, StepCode, Verdict } from "../plans/codes.ts";
import { PlanRequestSchema } from "../plans/schema.ts";
import { TestPieceSchema } from "../plans/test-piece-schema.ts";
import { MarkSchema } from "../routers/schema.ts";
import { JobFindingCode, OrderRuleCode, WhyNotTakenCode } from "./codes.ts";

const closed = { additionalProperties: false } as const;
const text = Type.String({ description: "The sentence for people." });
const place = {
  part: Type.Integer({ minimum: 1, description: "The part, by its place in the list." }),
  cut: Type.Integer({ minimum: 1, description: "The cut, by its place in the part." }),
};
const machine = {
  bitId: Type.String({ description: "The bit." }),
  routerId: Type.String({ description: "The router." }),
  mounting: Type.Enum(["table", "handheld"], { type: "string", description: "How it is held." }),
};
const setting = {
  mark: orNull(ref(MarkSchema), "The mark to turn to; null without a dial."),
  rpm: Type.Integer({ description: "Nominal speed." }),
};

export const MinutesSchema = Type.Object(
  {
    leastMin: Type.Number({ description: "At least." }),
    usualMin: Type.Number({ description: "As computed." }),
    mostMin: Type.Number({ description: "At most." }),
  },
  { $id: "MinuteRange", description: "Minutes of work; nothing of it is measured.", ...closed },
);

const FindingSchema = Type.Object(
  {
    code: ref(JobFindingCode.schema),
    severity: ref(Severity.schema),
    part: Type.Optional(place.part),
    cut: Type.Optional(place.cut),
    bitId: Type.Optional(Type.String({ description: "The bit it is about." })),
    insteadBitIds: Type.Optional(
      Type.Array(Type.String(), { description: "Bits of the same form and sizes that are free then." }),
    ),
    text,
  },
  { $id: "JobFinding", description: "Something that weighs on a job.", ...closed },
);

const NotTakenSchema = Type.Object(
  {
    bitId: machine.bitId,
    routerId: Type.Optional(machine.routerId),
    code: ref(WhyNotTakenCode.schema),
    text,
  },
  { $id: "BitNotTaken", description: "A bit that was looked at and not taken.", ...closed },
);

const PlannedCutSchema = Type.Object(
  {
    ...place,
    pieces: Type.Integer({ description: "How many pieces, spares among them." }),
    isWasteFor: Type.Optional(
      Type.Integer({ minimum: 1, description: "The cut of the same part that it takes wood out for." }),
    ),
    bitId: orNull(Type.String(), "The bit taken; null if there is none."),
    routerId: orNull(Type.String(), "The router; null if there is none."),
    mounting: orNull(machine.mounting, "How it is held."),
    verdict: ref(Verdict.schema),
    mark: setting.mark,
    rpm: orNull(Type.Integer(), "Nominal speed; null if it must not be run."),
    passes: Type.Integer({ description: "How many passes." }),
    guide: orNull(ref(GuideCode.schema), "What guides it."),
    request: orNull(
      ref(PlanRequestSchema),
      "What to ask for its whole plan with: the body of POST /v1/plans/preview.",
    ),
    digest: orNull(Type.String(), "Digest of its plan."),
    notTaken: Type.Array(ref(NotTakenSchema), {
      description: "Other bits that were looked at, the nearest first.",
    }),
  },
  { $id: "JobPlannedCut", description: "A cut with the bit that was taken for it.", ...closed },
);

const RunSchema = Type.Object(
  {
    ...place,
    name: Type.String({ description: "The part's name." }),
    pass: Type.Integer({ minimum: 1, description: "The pass of that cut." }),
    pieces: Type.Integer({ description: "How many pieces." }),
    work: Type.Optional(
      Type.Enum(["flat", "standing"], {
        type: "string",
        description: "How the work lies, if it was searched.",
      }),
    ),
    face: Type.Optional(
      Type.Enum(["front", "back"], {
        type: "string",
        description: "Which face is then down, or to the fence if it stands.",
      }),
    ),
    fenceMm: Type.Number({ description: "The fence of the pass, set or given by a bearing." }),
    metres: Type.Number({ description: "Metres cut, all pieces together." }),
    secondsPerPiece: Type.Number({ description: "How long a hand takes along one piece." }),
  },
  { $id: "JobRun", description: "Pieces of one part at one set-up.", ...closed },
);

const SetupSchema = Type.Object(
  {
    id: Type.String({ description: "What it is called in this job." }),
    number: Type.Integer({ minimum: 1, description: "Its place in the order of work." }),
    ...machine,
    guide: ref(GuideCode.schema),
    kind: Type.Enum(["back-rout", "rough", "finish"], { type: "string", description: "Which kind of pass." }),
    heightMm: Type.Number({ description: "Set the bit this far out of the table or base, to its tip." }),
    cutterMm: Type.Number({ description: "How much of that is its cutter." }),
    fenceMm: orNull(Type.Number(), "Set the fence this far in front of its axis; null if nothing is set."),
    positionMm: orNull(Type.Number(), "Of a groove in a face: where its middle lies, from the edge or end."),
    ...setting,
    testPiece: Type.Optional(ref(TestPieceSchema)),
    after: Type.Array(Type.Object({ setupId: Type.String(), rule: ref(OrderRuleCode.schema) }, closed), {
      description: "What comes before it, and why.",
    }),
    runs: Type.Array(ref(RunSchema), { description: "What is cut at it, ends first." }),
    settings: Type.Array(Type.Object({ code: ref(StepCode.schema), text }, closed), {
      description: "How it is set, as the plan of the first of its runs says it.",
    }),
    changeMin: Type.Number({ description: "Minutes to change over to it." }),
    cuttingMin: Type.Number({ description: "Minutes of cutting." }),
    handlingMin: Type.Number({ description: "Minutes of fetching and laying on." }),
    text,
  },
  {
    $id: "JobSetup",
    description: "One bit at one height, fence and mark: everything in the job that is cut so.",
    ...closed,
  },
);

const EdgeSchema = Type.Object(
  {
    bitId: machine.bitId,
    usedPercentBefore: Type.Number({ description: "How much of its edge's life is used before the job." }),
    usedPercentAfter: Type.Number({ description: "And after it." }),
    text,
  },
  { $id: "EdgeOverJob", description: "What the job takes of one bit's edge: an estimate.", ...closed },
);

const FetchSchema = Type.Object(
  {
    bitId: machine.bitId,
    name: Type.String({ description: "Its name." }),
    state: Type.String({ description: "Where it stands." }),
    placeId: orNull(Type.String(), "Where it was last seen."),
    homePlaceId: orNull(Type.String(), "Where it is brought back to."),
  },
  { $id: "JobBit", description: "A bit to fetch, and to bring back.", ...closed },
);

const GroundSchema = Type.Object(
  {
    bitId: machine.bitId,
    routerId: machine.routerId,
    mounting: machine.mounting,
    woodId: Type.String({ description: "The wood." }),
    digest: Type.String({ description: "Digest of what was known of them." }),
    diameterMm: orNull(Type.Number(), "The bit's greatest diameter then."),
    sharpenedAt: orNull(Type.String(), "When it had last been sharpened."),
  },
  {
    $id: "JobGround",
    description: "What a job was computed from, for one bit in one router and wood.",
    ...closed,
  },
);

export const JobWorkSchema = Type.Object(
  {
    verdict: ref(Verdict.schema),
    findings: Type.Array(ref(FindingSchema), { description: "What weighs on it." }),
    cuts: Type.Array(ref(PlannedCutSchema), { description: "Every cut, in the order of the parts." }),
    setups: Type.Array(ref(SetupSchema), { description: "In the order of work." }),
    order: Type.Object(
      {
        changeoverMin: Type.Number({ description: "Minutes of changing over in this order." }),
        lowerBoundMin: Type.Number({ description: "No order takes less." }),
        gapPercent: Type.Number({ description: "How much of the least this order may be over it." }),
        isProvenLeast: Type.Boolean({ description: "Whether no order takes less than this one." }),
      },
      { description: "How good the order is.", ...closed },
    ),
    minutes: Type.Object(
      {
        cutting: ref(MinutesSchema),
        handling: ref(MinutesSchema),
        changingOver: ref(MinutesSchema),
        total: ref(MinutesSchema),
      },
      { description: "How long it takes.", ...closed },
    ),
    edges: Type.Array(ref(EdgeSchema), { description: "What it takes of each edge." }),
    bits: Type.Array(ref(FetchSchema), { description: "What to fetch before, and to bring back after." }),
    grounds: Type.Array(ref(GroundSchema), { description: "What it was computed from." }),
    computedAt: Type.String({ format: "date-time", description: "When it was computed." }),
    engineVersion: Type.String({ description: "Version of the computation." }),
    advice: Type.String({ description: "What comes before this plan." }),
  },
  { $id: "JobWork", description: "A job as it was computed.", ...closed },
);

export const WORK_SCHEMAS = [
  MinutesSchema,
  FindingSchema,
  NotTakenSchema,
  PlannedCutSchema,
  RunSchema,
  SetupSchema,
  EdgeSchema,
  FetchSchema,
  GroundSchema,
  JobWorkSchema,
];

export type JobWork = Static<typeof JobWorkSchema>;
export type JobFinding = Static<typeof FindingSchema>;
export type JobPlannedCut = Static<typeof PlannedCutSchema>;
export type JobSetupShown = Static<typeof SetupSchema>;
export type NotTaken = Static<typeof NotTakenSchema>;
export type EdgeShown = Static<typeof EdgeSchema>;
export type JobBitShown = Static<typeof FetchSchema>;
export type JobGround = Static<typeof GroundSchema>;
