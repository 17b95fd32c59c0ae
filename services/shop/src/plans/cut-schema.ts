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

const depthMm = Type.Number({ ...within(CUT_RANGES.depthMm), description: "Depth of the cut." });

const profileFields = {
  edges,
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
        "How far its axis stands behind the fence or pilot contact. Left out: the pilot's radius, or 0 without one.",
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
    edges,
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
  { kind: Type.Literal("groove"), edges, depthMm },
  { $id: "GrooveCut", description: "A groove or dado at the bit's own width.", additionalProperties: false },
);

export const CutSchema = {
  ...Type.Unsafe<Cut>({
    type: "object",
    discriminator: { propertyName: "kind" },
    oneOf: [ref(EdgeCutSchema), ref(PanelCutSchema), ref(RabbetCutSchema), ref(GrooveCutSchema)],
  }),
  $id: "Cut",
  description: "one of: edge, panel, rabbet, groove",
};

export const CUT_SCHEMAS = [
  EdgeSchema,
  EdgeCutSchema,
  PanelCutSchema,
  RabbetCutSchema,
  GrooveCutSchema,
  CutSchema,
];
