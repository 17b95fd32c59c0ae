import type { Fault } from "../../quantity/fault.ts";
import type { ChoiceSpec, Fields, FieldValue, MeasureSpec } from "../../quantity/field.ts";
import type { Outline } from "../outline.ts";
import type { GivenSegment } from "./given-segment.ts";
import type { Sizes } from "./read-wall.ts";
import type { CutKind, UsualCut } from "./usual-cut.ts";

/** A whole outline, point by point. */
export type SegmentsSpec = {
  readonly type: "segments";
  readonly most: number;
  readonly meaning: string;
  readonly optional: boolean;
};

export type DimensionSpec = MeasureSpec | ChoiceSpec | SegmentsSpec;
export type DimensionSpecs = Readonly<Record<string, DimensionSpec>>;

type ValueOf<Spec> = Spec extends SegmentsSpec ? readonly GivenSegment[] : FieldValue<Spec>;

/** The TypeScript type of a form's dimensions, read off their specifications. */
export type DimensionsOf<Specs extends DimensionSpecs> = Fields<
  Specs,
  { readonly [Name in keyof Specs]: ValueOf<Specs[Name]> }
>;

/** Sizes besides diameter, shank and length that a person asks for a bit by. */
export type SearchedBy = { readonly radiusMm?: number; readonly angleDeg?: number };

/** One bit form: everything the program knows of it. Wire schema, validation, documents, search and drawing follow. */
export type FormDefinition<Kind extends string, Specs extends DimensionSpecs> = {
  readonly kind: Kind;
  readonly title: string;
  readonly meaning: string;
  /** What else the trade calls it and its work: words it is found by. Source: common practice. */
  readonly alsoCalled: readonly string[];
  /** The kinds of cut it is made for, the main one first; whether one bit's dimensions allow it is the cut's to say. */
  readonly suits: readonly CutKind[];
  readonly dimensions: Specs;
  /** What no single range can say: how the dimensions must fit each other. Pointers start at the form. */
  readonly faults: (dimensions: DimensionsOf<Specs>) => Fault[];
  readonly outline: (dimensions: DimensionsOf<Specs>) => Outline;
  /** Radius in mm of the pilot bearing; undefined without one. */
  readonly pilotRadiusMm: (dimensions: DimensionsOf<Specs>) => number | undefined;
  /** The cut it is planned with if nobody says which. */
  readonly usualCut: (dimensions: DimensionsOf<Specs>, outline: Outline) => UsualCut;
  readonly searchedBy: (dimensions: DimensionsOf<Specs>) => SearchedBy;
  /** How the work is fed past it: lying on a face, or standing on edge with its face along the bit. */
  readonly work: "lying" | "standing";
  /** Whether it takes a table and a fence whatever it weighs: the work cannot be guided past it otherwise. Source: common practice. */
  readonly isForTableOnly?: boolean;
  /** Whether it cuts at its tip, so that it may be plunged: `some` must be looked at. Source: common practice. */
  readonly plunges: "always" | "some" | "never";
  /**
   * Of a joint whose halves meet at the middle of the stock: where that middle lies along the bit, mm from its tip. Absent for forms
   * that are set by one of their faces. Source: common practice.
   */
  readonly middleMm?: (dimensions: DimensionsOf<Specs>) => number;
  /**
   * Forms of this kind that may make a wall at once, their dimensions read off it in some sizes: the wall is given as the
   * outline of a bit that would just fill it. Each is tried before it is proposed, so a form may be wrong. Absent for forms
   * that are not proposed.
   */
  readonly formsFor?: (
    wall: Outline,
    sizes: Sizes,
  ) => readonly ({ readonly kind: Kind } & DimensionsOf<Specs>)[];
  /** Share of the ring between hub and rim that is metal, for the mass estimate. Ours, set by what such bits weigh. */
  readonly wingFillRatio: number;
};

/** Ties a definition's kind and dimension types together; adds nothing at run time. */
export function defineForm<const Kind extends string, const Specs extends DimensionSpecs>(
  definition: FormDefinition<Kind, Specs>,
): FormDefinition<Kind, Specs> {
  return definition;
}

/** An outline given point by point. */
export function segments(meaning: string, most: number) {
  return { type: "segments", most, meaning, optional: false } as const;
}
