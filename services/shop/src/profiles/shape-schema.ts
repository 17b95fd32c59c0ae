import { WANTED_RANGES, type WantedSegment } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";

const closed = { additionalProperties: false } as const;

const corner = {
  xMm: Type.Number({ ...within(WANTED_RANGES.xMm), description: "From the edge into the work." }),
  zMm: Type.Number({
    minimum: 0,
    maximum: WANTED_RANGES.thicknessMm.max,
    description: "From the front face toward the back one.",
  }),
};

const CornerSchema = Type.Object(corner, {
  $id: "ProfileCorner",
  description: "A corner of the wall.",
  ...closed,
});

const LineSchema = Type.Object(
  { kind: Type.Literal("line"), ...corner },
  { $id: "ProfileLine", description: "Straight to this corner.", ...closed },
);

const ArcSchema = Type.Object(
  {
    kind: Type.Literal("arc"),
    ...corner,
    arcRadiusMm: Type.Number({ ...within(WANTED_RANGES.arcRadiusMm), description: "Its radius." }),
    curve: Type.Enum(["hollow", "round"], {
      type: "string",
      description: "Whether the work is left hollow, as by a cove, or round, as by a round-over.",
    }),
  },
  { $id: "ProfileArc", description: "An arc of at most half a circle to this corner.", ...closed },
);

const SegmentSchema = unionOf<WantedSegment>(
  "ProfileSegment",
  "kind",
  [LineSchema, ArcSchema],
  "A stretch of the wall, from where the one before ended.",
);

const thicknessMm = Type.Number({
  ...within(WANTED_RANGES.thicknessMm),
  description: "Thickness of the stock.",
});

export const ProfileShapeSchema = Type.Object(
  {
    thicknessMm,
    start: Type.Optional(ref(CornerSchema)),
    segments: Type.Optional(
      Type.Array(ref(SegmentSchema), {
        minItems: WANTED_RANGES.segments.min,
        maxItems: WANTED_RANGES.segments.max,
        description:
          "The wall that is left, corner by corner. It starts and ends on the surface of the stock.",
      }),
    ),
    path: Type.Optional(
      Type.String({
        minLength: 1,
        maxLength: 20_000,
        description:
          "The same as SVG path data instead: x is the depth from the edge; y starts at 0, the front face, and falls toward the back one, as up is in a drawing.",
      }),
    ),
    unitMm: Type.Optional(
      Type.Number({
        minimum: 0.001,
        maximum: 1000,
        description: "Millimetres to one unit of the path. Default: 1.",
      }),
    ),
  },
  {
    $id: "ProfileShape",
    description: "A profile along an edge: its wall as `start` and `segments`, or as a `path`.",
    ...closed,
  },
);

export const SHAPE_SCHEMAS = [CornerSchema, LineSchema, ArcSchema, SegmentSchema, ProfileShapeSchema];

export type ProfileShape = Static<typeof ProfileShapeSchema>;
