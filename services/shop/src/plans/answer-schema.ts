import Type, { type Static } from "typebox";
import { orNull } from "../http/fields.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";
import {
  AssumptionCode,
  Clearance,
  ClearanceReasonCode,
  FindingCode,
  GuideCode,
  LimitName,
  PLAN_CODES,
  PrecautionCode,
  Severity,
  StepCode,
  Verdict,
} from "./codes.ts";
import { PlanPassSchema } from "./pass-schema.ts";
import { PROFILE_SCHEMAS, ProfilesField } from "./profile-schema.ts";
import { NoSpeed, SPEED_SCHEMAS, Speed, type SpeedAnswer } from "./speed-schema.ts";
import { TestPieceSchema } from "./test-piece-schema.ts";

const closed = { additionalProperties: false } as const;
const text = Type.String({ description: "The sentence for people." });

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

const shared = {
  findings: Type.Array(ref(Finding), { description: "What the verdict rests on." }),
  mounting: ref(Mounting),
  limits: Type.Array(ref(Limit), { description: "Every limit that applies, lowest first." }),
  guide: Type.Optional(
    orNull(
      ref(Guide),
      "What guides the work or the router; null when nothing does. Absent in plans of older versions.",
    ),
  ),
  testPiece: Type.Optional(ref(TestPieceSchema)),
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
};

const parts = {
  passes: Type.Array(ref(PlanPassSchema), { description: "In order." }),
  steps: Type.Array(ref(Step), { description: "The order of work." }),
  ...shared,
};

const ToRun = Type.Object(
  {
    verdict: Type.Enum(
      Verdict.schema.enum.filter((verdict) => verdict !== "do-not-run"),
      { type: "string", description: "What it comes to." },
    ),
    speed: ref(Speed),
    ...parts,
  },
  { $id: "PlanToRun", description: "A plan that may be run.", ...closed },
);

const NotToRun = Type.Object(
  {
    verdict: Type.Enum(["do-not-run"], {
      type: "string",
      description: "No speed and no passes: nothing in it can be followed by mistake.",
    }),
    speed: ref(NoSpeed),
    passes: Type.Array(ref(PlanPassSchema), { maxItems: 0, description: "None." }),
    steps: Type.Array(ref(Step), { maxItems: 0, description: "None." }),
    ...shared,
  },
  { $id: "PlanNotToRun", description: "A plan that must not be run.", ...closed },
);

/** Parts of a plan. The verdict and the advice come with every part: nobody gets a speed without them. */
export const PlanPartsSchema = Type.Object(
  {
    verdict: ref(Verdict.schema),
    ...Type.Partial(Type.Object({ speed: Type.Union([ref(Speed), ref(NoSpeed)]), ...parts })).properties,
    advice: shared.advice,
  },
  {
    $id: "PlanParts",
    description: "The fields of a plan that `fields` asked for, with its verdict and advice.",
    ...closed,
  },
);

/** A plan as it is made and kept: both kinds in one, so that what makes it need not tell them apart. */
export type PlanAnswer = Omit<Static<typeof ToRun>, "verdict" | "speed"> & {
  verdict: Static<typeof Verdict.schema>;
  speed: SpeedAnswer;
};

export const PlanAnswerSchema = unionOf<PlanAnswer>(
  "Plan",
  "verdict",
  [ToRun, NotToRun],
  "A plan for one cut. One that must not be run has no speed.",
);

export const ANSWER_SCHEMAS = [
  ...PLAN_CODES.map(({ schema }) => schema),
  ...SPEED_SCHEMAS,
  Guide,
  Precaution,
  Assumption,
  Mounting,
  Limit,
  PlanPassSchema,
  Step,
  TestPieceSchema,
  Finding,
  ...PROFILE_SCHEMAS,
  ToRun,
  NotToRun,
  PlanAnswerSchema,
  PlanPartsSchema,
];
