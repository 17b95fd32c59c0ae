import type { Fault } from "../../quantity/fault.ts";
import type { Outline } from "../outline.ts";
import type { GivenSegment } from "./given-segment.ts";

/** A measured dimension of a form: what it is, in which unit, between which bounds. */
export type MeasureSpec = {
  readonly type: "measure";
  readonly unit: "mm" | "deg" | "count";
  readonly min: number;
  readonly max: number;
  readonly meaning: string;
  /** May be left out; the form then takes what `meaning` says. */
  readonly optional: boolean;
};

/** A dimension chosen from a short list of names. */
export type ChoiceSpec<Name extends string = string> = {
  readonly type: "choice";
  readonly names: readonly Name[];
  readonly meaning: string;
  readonly optional: boolean;
};

/** A whole outline, point by point. */
export type SegmentsSpec = {
  readonly type: "segments";
  readonly most: number;
  readonly meaning: string;
  readonly optional: boolean;
};

export type DimensionSpec = MeasureSpec | ChoiceSpec | SegmentsSpec;
export type DimensionSpecs = Readonly<Record<string, DimensionSpec>>;

type ValueOf<Spec> =
  Spec extends ChoiceSpec<infer Name> ? Name : Spec extends SegmentsSpec ? readonly GivenSegment[] : number;
type OptionalNames<Specs> = {
  [Name in keyof Specs]: Specs[Name] extends { readonly optional: true } ? Name : never;
}[keyof Specs];

/** The TypeScript type of a form's dimensions, read off their specifications. */
export type DimensionsOf<Specs extends DimensionSpecs> = {
  readonly [Name in Exclude<keyof Specs, OptionalNames<Specs>>]: ValueOf<Specs[Name]>;
} & {
  readonly [Name in OptionalNames<Specs>]?: ValueOf<Specs[Name]>;
};

/** One bit form: everything that wire schema, validation, documents and drawing follow from. */
export type FormDefinition<Kind extends string, Specs extends DimensionSpecs> = {
  readonly kind: Kind;
  readonly title: string;
  readonly meaning: string;
  readonly dimensions: Specs;
  /** What no single range can say: how the dimensions must fit each other. Pointers start at the form. */
  readonly faults: (dimensions: DimensionsOf<Specs>) => Fault[];
  readonly outline: (dimensions: DimensionsOf<Specs>) => Outline;
  /** Radius in mm of the pilot bearing, where the form has one. */
  readonly pilotRadiusMm: (dimensions: DimensionsOf<Specs>) => number | undefined;
  /** Share of the ring between hub and rim that is metal, for the mass estimate. Ours, set by what such bits weigh. */
  readonly wingFillRatio: number;
};

/** Ties a definition's kind and dimension types together; adds nothing at run time. */
export function defineForm<const Kind extends string, const Specs extends DimensionSpecs>(
  definition: FormDefinition<Kind, Specs>,
): FormDefinition<Kind, Specs> {
  return definition;
}

/** A required length in mm between two bounds. */
export function lengthMm(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "mm", min, max, meaning, optional: false } as const;
}

/** A length in mm that may be left out. */
export function optionalLengthMm(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "mm", min, max, meaning, optional: true } as const;
}

/** A required angle in degrees between two bounds. */
export function angleDeg(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "deg", min, max, meaning, optional: false } as const;
}

/** An angle in degrees that may be left out. */
export function optionalAngleDeg(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "deg", min, max, meaning, optional: true } as const;
}

/** A whole number of things. */
export function count(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "count", min, max, meaning, optional: false } as const;
}

/** An outline given point by point. */
export function segments(meaning: string, most: number) {
  return { type: "segments", most, meaning, optional: false } as const;
}

/** A name out of a list. */
export function choice<const Name extends string>(meaning: string, names: readonly Name[]) {
  return { type: "choice", names, meaning, optional: false } as const;
}

/** A name out of a list that may be left out. */
export function optionalChoice<const Name extends string>(meaning: string, names: readonly Name[]) {
  return { type: "choice", names, meaning, optional: true } as const;
}
