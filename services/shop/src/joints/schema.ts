import { type CutSettings, JOINT_KINDS, JOINT_RANGES, JOINTS, type JointKind } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { BitInputSchema } from "../bits/schema.ts";
import { orNull } from "../http/fields.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { Severity } from "../plans/codes.ts";
import { RecordReferenceSchema } from "../plans/schema.ts";
import { JOINT_CODES, JointFindingCode, TemplateFindingCode } from "./codes.ts";

const closed = { additionalProperties: false } as const;

export const jointField = Type.Unsafe<JointKind>(
  Type.Enum([...JOINT_KINDS], {
    type: "string",
    description: `The joint. ${JOINTS.map(({ kind, halves }) => `${kind}: ${halves.map(({ name }) => name).join(", then ")}`).join("; ")}.`,
  }),
);

const bit = (which: string) =>
  Type.Union([ref(RecordReferenceSchema), ref(BitInputSchema)], {
    description: `The bit of the ${which} half, of the rack or described here.`,
  });

export const jointSizes = {
  otherThicknessMm: Type.Optional(
    Type.Number({
      ...within(JOINT_RANGES.otherThicknessMm),
      description: "Thickness of the other half's stock. Default: the same.",
    }),
  ),
  clearanceMm: Type.Optional(
    Type.Number({
      ...within(JOINT_RANGES.clearanceMm),
      description: "Play of what goes in, both sides together. Default: none.",
    }),
  ),
  depthMm: Type.Optional(
    Type.Number({
      ...within(JOINT_RANGES.depthMm),
      description:
        "How deep a dovetail or a slot is, or how wide a lap. Default: what the bits or the stock give.",
    }),
  ),
};

const off = (description: string) => Type.Optional(Type.Number({ minimum: -3, maximum: 3, description }));

const MeasuredSchema = Type.Object(
  {
    facesOffMm: off("How far the second half's face stands above the first one's."),
    tooThickMm: off("How much thicker what goes in is than the fit asked takes."),
    shouldersOpenMm: off("How wide the shoulders stay apart because what goes in is too long."),
    endsOffMm: off("Of a corner: how far the second half's outer face stands out past the end of the first."),
  },
  {
    $id: "JointMeasured",
    description: "What the test pieces of both halves showed, put together.",
    ...closed,
  },
);

export const JointRequestSchema = Type.Object(
  {
    joint: jointField,
    first: bit("first"),
    second: bit("second"),
    thicknessMm: Type.Number({
      ...within(JOINT_RANGES.thicknessMm),
      description: "Thickness of the first half's stock.",
    }),
    ...jointSizes,
    measured: Type.Optional(ref(MeasuredSchema)),
  },
  { $id: "JointRequest", description: "A joint, the bits of its halves, and the fit wanted.", ...closed },
);

const HalfSchema = Type.Object(
  {
    name: Type.String({ description: "The part it plays." }),
    cut: Type.Unsafe<CutSettings>({
      type: "object",
      description: "How it is cut: with `edges` it is the cut of a plan.",
      required: ["kind"],
      properties: {
        kind: { type: "string", description: "The kind of cut." },
        heightMm: { type: "number", description: "How far the bit stands out." },
        fenceMm: { type: "number", description: "The fence, in front of its axis." },
        thicknessMm: { type: "number", description: "Thickness of the stock." },
        depthMm: { type: "number", description: "How deep it is cut." },
        widthMm: { type: "number", description: "How far it reaches in." },
      },
      additionalProperties: false,
    }),
    measures: Type.Array(Type.String(), { description: "What its test piece must measure, as sentences." }),
  },
  { $id: "JointHalf", description: "One half of a joint and its setting.", ...closed },
);

const PlacedSchema = Type.Object(
  {
    mm: Type.Number({ description: "How much, 0 if there is none." }),
    xMm: Type.Number({ description: "From the first half's edge." }),
    zMm: Type.Number({ description: "From its face on the table." }),
  },
  { $id: "JointPlace", description: "A gap or an overlap, and where it is.", ...closed },
);

export const SolvedJointSchema = Type.Object(
  {
    joint: jointField,
    first: ref(HalfSchema),
    second: ref(HalfSchema),
    gap: ref(PlacedSchema),
    overlap: ref(PlacedSchema),
    facesOffMm: Type.Number({ description: "How far the second half's face stands above the first one's." }),
    endsOffMm: orNull(Type.Number(), "Of a corner: how far it misses being flush; null for other joints."),
    findings: Type.Array(
      Type.Object(
        {
          code: ref(JointFindingCode.schema),
          severity: ref(Severity.schema),
          text: Type.String({ description: "The sentence for people." }),
        },
        closed,
      ),
      { description: "What these bits cannot give, and whether they are a pair still." },
    ),
    isCorrected: Type.Boolean({ description: "Whether the settings follow what was measured." }),
    advice: Type.String({ description: "What comes before these settings." }),
  },
  { $id: "SolvedJoint", description: "A joint as its halves are set, and how they close.", ...closed },
);

const LINES = ["groove", "outside", "inside", "recess", "plug"] as const;
const diameterMm = (what: string) =>
  Type.Number({ minimum: 1, maximum: 150, description: `Diameter of the ${what}.` });

export const TemplateRequestSchema = Type.Object(
  {
    bitDiameterMm: diameterMm("bit"),
    runsBy: Type.Enum(["bushing", "bearing"], {
      type: "string",
      description: "What runs along the template.",
    }),
    runsDiameterMm: diameterMm("bushing or bearing"),
    line: Type.Enum([...LINES], { type: "string", description: "What is cut along the template's line." }),
    insideRadiusMm: Type.Optional(
      Type.Number({
        minimum: 0,
        maximum: 1000,
        description: "The inside corner that is wanted in the finished work.",
      }),
    ),
  },
  { $id: "TemplateRequest", description: "A bit, and what runs along a template with it.", ...closed },
);

const lengthOrNull = (description: string) => orNull(Type.Number(), description);

export const TemplateFitSchema = Type.Object(
  {
    offsetMm: Type.Number({
      description: "From the template's line to the cut's; under 0 the cut goes past the line.",
    }),
    leastInsideRadiusMm: Type.Number({ description: "The least inside corner in the finished work." }),
    leastTemplateRadiusMm: Type.Number({ description: "The least inside corner of the template." }),
    templateRadiusMm: lengthOrNull("The template's corner that gives the one wanted; null if none does."),
    otherBushingDiameterMm: lengthOrNull(
      "The bushing for the other part of an inlay; null if there is none.",
    ),
    findings: Type.Array(
      Type.Object(
        {
          code: ref(TemplateFindingCode.schema),
          severity: ref(Severity.schema),
          text: Type.String({ description: "The sentence for people." }),
        },
        closed,
      ),
      { description: "Why it does not give what is wanted." },
    ),
  },
  { $id: "TemplateFit", description: "What a bit cuts along a template.", ...closed },
);

export const JOINT_SCHEMAS = [
  ...JOINT_CODES.map(({ schema }) => schema),
  MeasuredSchema,
  JointRequestSchema,
  HalfSchema,
  PlacedSchema,
  SolvedJointSchema,
  TemplateRequestSchema,
  TemplateFitSchema,
];

export type JointRequest = Static<typeof JointRequestSchema>;
export type SolvedJointShown = Static<typeof SolvedJointSchema>;
export type TemplateRequest = Static<typeof TemplateRequestSchema>;
export type TemplateFitShown = Static<typeof TemplateFitSchema>;
