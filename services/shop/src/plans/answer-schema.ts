import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";
import { MarkSchema } from "../routers/schema.ts";
import {
  AssumptionCode,
  Clearance,
  ClearanceReasonCode,
  FindingCode,
  GuideCode,
  LimitName,
  PLAN_CODES,
  PrecautionCode,
  RaisedByCode,
  Severity,
  SpeedBasis,
  StepCode,
  UncertaintyCode,
  Verdict,
} from "./codes.ts";
import { PlanPassSchema } from "./pass-schema.ts";
import { PROFILE_SCHEMAS, ProfilesField } from "./profile-schema.ts";
import { TestPieceSchema } from "./test-piece-schema.ts";

const closed = { additionalProperties: false } as const;
const text = Type.String({ description: "The sentence for people." });
const orNull = <Schema extends Type.TSchema>(schema: Schema, description: string) =>
  Type.Union([schema, Type.Null()], { description });

const RaisedBy = Type.Object(
  { code: ref(RaisedByCode.schema), text },
  { $id: "RaisedBy", description: "What would lift a limit.", ...closed },
);

const Guide = Type.Object(
  { code: ref(GuideCode.schema), text },
  { $id: "PlanGuide", description: "What guides the work or the router.", ...closed },
);

const Precaution = Type.Object(
  { code: ref(PrecautionCode.schema), text },
  { $id: "PlanPrecaution", description: "What a careful teacher would say at the machine.", ...closed },
);

const Assumption = Type.Object(
  { code: ref(AssumptionCode.schema), text },
  { $id: "PlanAssumption", description: "What was taken for granted, and on which side.", ...closed },
);

const Mounting = Type.Object(
  {
    requested: Type.Enum(["table", "handheld"], { type: "string", description: "As asked." }),
    allowed: ref(Clearance.schema),
    reasons: Type.Array(
      Type.Object({ code: ref(ClearanceReasonCode.schema), clearance: ref(Clearance.schema), text }, closed),
      {
        description:
          "Diameter, mass and what it does when it spins, each against its thresholds, with what that alone would allow.",
      },
    ),
  },
  {
    $id: "PlanMounting",
    description:
      "Handheld, or in a table: what the bit is cleared for is the strictest of the reasons, and a table is always allowed.",
    ...closed,
  },
);

const FasterSetting = Type.Object(
  {
    mark: orNull(ref(MarkSchema), "The next faster mark; null without a dial."),
    rpm: Type.Integer({ description: "Its nominal speed." }),
    rpmHighest: Type.Integer({ description: "The fastest it may actually run there." }),
    breaks: Type.Array(ref(LimitName.schema), { description: "The limits it would break." }),
  },
  { $id: "FasterSetting", description: "Why the next mark is too fast.", ...closed },
);

const Rotation = Type.Object(
  {
    rpm: Type.Integer({ description: "The fastest it may actually run." }),
    storedEnergyJ: Type.Number({ description: "Energy of the spin." }),
    unbalanceForceN: Type.Number({
      description: "Rotating force of the unbalance, with the swing it causes.",
    }),
    unbalancePerWeightRatio: Type.Number({ description: "The same as a multiple of the bit's weight." }),
    balanceGradeMmPerS: Type.Number({ description: "Eccentricity times angular speed (ISO 21940-11)." }),
    criticalSpeedRpm: Type.Integer({ description: "First bending resonance, with what the collet gives." }),
    rimStressMPa: Type.Number({ description: "Hoop stress of the rim as a thin steel ring." }),
    bodyStressMPa: Type.Number({ description: "Stress of the body as a steel disc with a hole." }),
    tipForceN: Type.Number({ description: "Pull on one tip at the rim." }),
    tipEnergyJ: Type.Number({ description: "Energy of that tip if it came off." }),
    gyroscopicCoupleNm: Type.Number({ description: "Couple with which it resists being tilted at 1 rad/s." }),
  },
  {
    $id: "PlanRotation",
    description: "What spinning does to the bit, each figure at its safe edge.",
    ...closed,
  },
);

/** What a plan says of the speed. */
export const Speed = Type.Object(
  {
    ceilingRpm: Type.Integer({ description: "The least of the limits." }),
    bindingLimit: ref(LimitName.schema),
    nextLimit: orNull(ref(LimitName.schema), "The limit that would hold if that one were lifted."),
    raisedBy: orNull(ref(RaisedBy), "What would lift the binding limit; null if nothing may."),
    rpm: orNull(Type.Integer(), "Nominal speed to run at; null when the verdict is do-not-run."),
    rpmHighest: orNull(Type.Integer(), "The fastest it may actually be there: under every hard limit."),
    mark: orNull(
      ref(MarkSchema),
      "The mark to turn to; null without a dial, or when the verdict is do-not-run.",
    ),
    basis: orNull(ref(SpeedBasis.schema), "What the speed at that mark rests on."),
    rimSpeedMPerS: orNull(Type.Number(), "Speed of the rim there."),
    rimSpeedMph: orNull(Type.Number(), "The same in miles an hour."),
    slowestEdgeMPerS: orNull(
      Type.Number(),
      "Speed of the slowest point of the edge in the wood: there it burns first.",
    ),
    rotation: orNull(ref(Rotation), "What spinning does there; null when the verdict is do-not-run."),
    nextFaster: orNull(ref(FasterSetting), "Why not one mark faster; null on the fastest."),
    uncertainties: Type.Array(
      Type.Object(
        {
          code: ref(UncertaintyCode.schema),
          gainRpm: Type.Integer({ description: "Speed gained by measuring it." }),
          text,
        },
        closed,
      ),
      { description: "What not knowing costs, the dearest first." },
    ),
    display: Type.Optional(
      Type.Object(
        { rpm: Type.String(), rimSpeed: Type.String() },
        { description: "As a person would read it; present if `units` was given.", ...closed },
      ),
    ),
  },
  { $id: "PlanSpeed", description: "The ceiling and the setting under it.", ...closed },
);

const Limit = Type.Object(
  {
    name: ref(LimitName.schema),
    rpm: Type.Integer({ description: "At most this fast." }),
    strength: Type.Enum(["hard", "guide"], {
      type: "string",
      description:
        "Under a hard limit the speed stays with its uncertainty, under a guide the nominal speed does.",
    }),
    isBinding: Type.Boolean({ description: "Whether it is the least of them." }),
    basis: Type.String({ description: "The numbers behind it, as a sentence." }),
    formula: Type.String({ description: "How it is computed." }),
    source: Type.String({ description: "Where it comes from." }),
  },
  { $id: "SpeedLimit", description: "One reason not to spin faster.", ...closed },
);

const Step = Type.Object(
  {
    number: Type.Integer({ minimum: 1, description: "Place in the order of work." }),
    code: ref(StepCode.schema),
    pass: Type.Optional(Type.Integer({ minimum: 1, description: "The pass it belongs to." })),
    bitId: Type.Optional(
      Type.String({
        description: "The bit of the rack it is made with, if that is another than the plan's.",
      }),
    ),
    text,
  },
  { $id: "PlanStep", description: "One thing to do.", ...closed },
);

const Finding = Type.Object(
  {
    code: ref(FindingCode.schema),
    severity: ref(Severity.schema),
    text,
  },
  { $id: "PlanFinding", description: "Something that weighs on the verdict.", ...closed },
);

export const PlanAnswerSchema = Type.Object(
  {
    verdict: ref(Verdict.schema),
    findings: Type.Array(ref(Finding), { description: "What the verdict rests on." }),
    mounting: ref(Mounting),
    speed: ref(Speed),
    limits: Type.Array(ref(Limit), { description: "Every limit that applies, lowest first." }),
    passes: Type.Array(ref(PlanPassSchema), {
      description: "In order; empty when the verdict is do-not-run.",
    }),
    guide: Type.Optional(
      orNull(
        ref(Guide),
        "What guides the work or the router; null when nothing does. Absent in plans of older versions.",
      ),
    ),
    testPiece: Type.Optional(ref(TestPieceSchema)),
    steps: Type.Array(ref(Step), { description: "The order of work; empty when the verdict is do-not-run." }),
    precautions: Type.Array(ref(Precaution), {
      description: "What a careful teacher would say at the machine.",
    }),
    assumptions: Type.Array(ref(Assumption), {
      description: "What was taken for granted, and on which side.",
    }),
    profiles: ProfilesField,
    wood: Type.Object(
      { id: Type.String({ description: "Its id." }), name: Type.String({ description: "Its name." }) },
      { description: "What is cut.", ...closed },
    ),
    advice: Type.String({ description: "What comes before this plan." }),
    digest: Type.String({
      description: "SHA-256 of the canonical inputs (RFC 8785) and the engine's version, `sha256:…`.",
    }),
    engineVersion: Type.String({ description: "Version of the computation." }),
  },
  { $id: "Plan", description: "A plan for one cut.", ...closed },
);

export const ANSWER_SCHEMAS = [
  ...PLAN_CODES.map(({ schema }) => schema),
  RaisedBy,
  Guide,
  Precaution,
  Assumption,
  Mounting,
  FasterSetting,
  Rotation,
  Speed,
  Limit,
  PlanPassSchema,
  Step,
  TestPieceSchema,
  Finding,
  ...PROFILE_SCHEMAS,
  PlanAnswerSchema,
];

export type PlanAnswer = Static<typeof PlanAnswerSchema>;
