import { GIVEN_SEGMENT_RANGES, type GivenSegment } from "@rimwise/domain";
import Type from "typebox";
import { within } from "../http/range.ts";
import { unionOf } from "../http/union.ts";

const endFields = {
  toMm: Type.Number({
    ...within(GIVEN_SEGMENT_RANGES.toMm),
    description: "Distance of its far end from the tip.",
  }),
  radiusMm: Type.Number({
    ...within(GIVEN_SEGMENT_RANGES.radiusMm),
    description: "Radius of the bit there.",
  }),
};

const LineSegmentSchema = Type.Object(
  { kind: Type.Literal("line"), ...endFields },
  {
    $id: "LineSegment",
    description: "Straight; at the distance it starts from, a step square to the axis.",
    additionalProperties: false,
  },
);

const ArcSegmentSchema = Type.Object(
  {
    kind: Type.Literal("arc"),
    ...endFields,
    arcRadiusMm: Type.Number({
      ...within(GIVEN_SEGMENT_RANGES.arcRadiusMm),
      description: "Radius of the arc.",
    }),
    bulge: Type.Enum(["outward", "inward"], {
      type: "string",
      description: "Which way it bulges, seen from the axis.",
    }),
  },
  { $id: "ArcSegment", description: "Circular.", additionalProperties: false },
);

/** One stretch of a custom outline, from where the one before ended. */
export const GivenSegmentSchema = unionOf<GivenSegment>(
  "GivenSegment",
  "kind",
  [LineSegmentSchema, ArcSegmentSchema],
  "one of: line, arc",
);

export const GIVEN_SEGMENT_SCHEMAS = [LineSegmentSchema, ArcSegmentSchema, GivenSegmentSchema];
