import { CUT_RANGES, type Cut } from "@rimwise/domain";
import Type from "typebox";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";

export const EdgeSchema = Type.Object(
  {
    lengthMm: Type.Number({ ...within(CUT_RANGES.lengthMm), description: "Length of the edge or run." }),
    grain: Type.Enum(["end", "long"], {
      type: "string",
      description: "Across the grain's end, or along it.",
    }),
  },
  { $id: "Edge", description: "One edge, or one run of a groove.", additionalProperties: false },
);

const edges = Type.Array(ref(EdgeSchema), {
  minItems: CUT_RANGES.edges.min,
  maxItems: CUT_RANGES.edges.max,
  description: "What is to be cut, in the order to report it.",
});

const anyCut = {
  edges,
  feedDirection: Type.Optional(
    Type.Enum(["against-rotation", "with-rotation"], {
      type: "string",
      description: "Left out: against the rotation. With it (a climb cut) only a light bite is planned.",
    }),
  ),
};

const alongEdge = {
  curved: Type.Optional(
    Type.Boolean({ description: "The edge is curved: run against the pilot, without a fence." }),
  ),
  side: Type.Optional(
    Type.Enum(["outside", "inside"], {
      type: "string",
      description:
        "Handheld: around the outside of the work, or the inside of an opening. Left out: outside.",
    }),
  ),
};

const depthMm = Type.Number({ ...within(CUT_RANGES.depthMm), description: "Depth of the cut." });

const profileFields = {
  ...anyCut,
  ...alongEdge,
  thicknessMm: Type.Optional(
    Type.Number({
      ...within(CUT_RANGES.thicknessMm),
      description: "Thickness of the work. Left out: 19 mm is assumed.",
    }),
  ),
  heightMm: Type.Optional(
    Type.Number({
      ...within(CUT_RANGES.heightMm),
      description: "How far the bit stands out of the table or base at the end. Left out: its whole profile.",
    }),
  ),
  fenceMm: Type.Optional(
    Type.Number({
      ...within(CUT_RANGES.fenceMm),
      description:
        "How far its axis stands behind the fence or pilot contact. Left out: the pilot's radius; without one the least radius of the profile, or 0 for a parallel bit.",
    }),
  ),
};

export const EdgeCutSchema = Type.Object(
  { kind: Type.Literal("edge"), ...profileFields },
  { $id: "EdgeCut", description: "A profile along an edge.", additionalProperties: false },
);

export const PanelCutSchema = Type.Object(
  { kind: Type.Literal("panel"), ...profileFields },
  {
    $id: "PanelCut",
    description: "A raised field: an edge cut around all the edges of a panel.",
    additionalProperties: false,
  },
);

export const RabbetCutSchema = Type.Object(
  {
    kind: Type.Literal("rabbet"),
    ...anyCut,
    ...alongEdge,
    depthMm,
    widthMm: Type.Optional(
      Type.Number({
        ...within(CUT_RANGES.widthMm),
        description: "Width of the step. Left out: what the pilot gives, or the bit's radius without one.",
      }),
    ),
  },
  { $id: "RabbetCut", description: "A rectangular step along an edge.", additionalProperties: false },
);

export const GrooveCutSchema = Type.Object(
  {
    kind: Type.Literal("groove"),
    ...anyCut,
    depthMm,
    stopped: Type.Optional(Type.Boolean({ description: "It starts or ends inside the work." })),
  },
  {
    $id: "GrooveCut",
    description:
      "A groove or dado at the bit's own width; a dovetail, keyhole or T-slot with a bit of that form.",
    additionalProperties: false,
  },
);

export const JointCutSchema = Type.Object(
  { kind: Type.Literal("joint"), ...profileFields },
  {
    $id: "JointCut",
    description:
      "One half of a joint along an edge: tongue, groove, cope, stick, lock-mitre, drawer or finger joint.",
    additionalProperties: false,
  },
);

export const TrimCutSchema = Type.Object(
  {
    kind: Type.Literal("trim"),
    ...anyCut,
    ...alongEdge,
    overhangMm: Type.Number({
      ...within(CUT_RANGES.overhangMm),
      description: "What stands out past the template.",
    }),
    thicknessMm: profileFields.thicknessMm,
  },
  { $id: "TrimCut", description: "Trims an overhang flush with a template.", additionalProperties: false },
);

export const SurfaceCutSchema = Type.Object(
  {
    kind: Type.Literal("surface"),
    ...anyCut,
    depthMm,
    widthMm: Type.Number({
      ...within(CUT_RANGES.surfaceWidthMm),
      description: "Width of the surface, square to the rows.",
    }),
    stepOverRatio: Type.Optional(
      Type.Number({
        ...within(CUT_RANGES.stepOverRatio),
        description: "How far each row moves over, as a share of the bit's diameter. Left out: 0.5.",
      }),
    ),
  },
  {
    $id: "SurfaceCut",
    description: "Planes a surface in overlapping rows; each edge is one row's length.",
    additionalProperties: false,
  },
);

const CUT_KINDS = [
  EdgeCutSchema,
  PanelCutSchema,
  JointCutSchema,
  RabbetCutSchema,
  GrooveCutSchema,
  TrimCutSchema,
  SurfaceCutSchema,
];

export const CutSchema = {
  ...Type.Unsafe<Cut>({
    type: "object",
    discriminator: { propertyName: "kind" },
    oneOf: CUT_KINDS.map((schema) => ref(schema)),
  }),
  $id: "Cut",
  description: `one of: ${CUT_KINDS.map(({ properties }) => properties.kind.const).join(", ")}`,
};

export const CUT_SCHEMAS = [EdgeSchema, ...CUT_KINDS, CutSchema];
