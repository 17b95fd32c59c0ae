/**
 * One stretch of an outline as a person gives it, from where the one before ended: its far end, and for an arc its radius and
 * whether it bulges outward. A line with the same distance as its start is a step square to the axis.
 */
export type GivenSegment =
  | { readonly kind: "line"; readonly toMm: number; readonly radiusMm: number }
  | {
      readonly kind: "arc";
      readonly toMm: number;
      readonly radiusMm: number;
      readonly arcRadiusMm: number;
      readonly bulge: "outward" | "inward";
    };

/** Accepted ranges of a segment's fields. */
export const GIVEN_SEGMENT_RANGES = {
  toMm: { min: 0, max: 120 },
  radiusMm: { min: 0, max: 60 },
  arcRadiusMm: { min: 0.1, max: 500 },
} as const;

/** Accepted ranges of a whole outline: how wide it may be, and of how many segments. */
export const GIVEN_OUTLINE_RANGES = {
  diameterMm: { min: 1, max: 120 },
  segments: { min: 1, max: 60 },
} as const;
