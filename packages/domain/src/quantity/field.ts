import type { Fault } from "./fault.ts";
import { rangeFaults } from "./range.ts";

/** A measured field: what it is, in which unit, between which bounds. */
export type MeasureSpec = {
  readonly type: "measure";
  readonly unit: "mm" | "deg" | "count" | "ratio";
  readonly min: number;
  readonly max: number;
  readonly meaning: string;
  /** May be absent; `meaning` then says what is taken. */
  readonly optional: boolean;
};

/** A field chosen from a short list of names. */
export type ChoiceSpec<Name extends string = string> = {
  readonly type: "choice";
  readonly names: readonly Name[];
  readonly meaning: string;
  readonly optional: boolean;
};

/** A field that is true or false. */
export type FlagSpec = { readonly type: "flag"; readonly meaning: string; readonly optional: boolean };

/** One field of a form or a cut as data: wire schema, validation and documents follow from it. */
export type FieldSpec = MeasureSpec | ChoiceSpec | FlagSpec;

export type FieldSpecs = Readonly<Record<string, FieldSpec>>;

/** The TypeScript type of a field's value. */
export type FieldValue<Spec> =
  Spec extends ChoiceSpec<infer Name> ? Name : Spec extends FlagSpec ? boolean : number;

/** A record with these values, those whose specification says so optional. */
export type Fields<Specs, Values extends { readonly [Name in keyof Specs]: unknown }> = {
  readonly [Name in Exclude<keyof Specs, OptionalNames<Specs>>]: Values[Name];
} & {
  readonly [Name in OptionalNames<Specs>]?: Values[Name];
};

/** The record that these specifications describe. */
export type FieldsOf<Specs extends FieldSpecs> = Fields<
  Specs,
  { readonly [Name in keyof Specs]: FieldValue<Specs[Name]> }
>;

type OptionalNames<Specs> = {
  [Name in keyof Specs]: Specs[Name] extends { readonly optional: true } ? Name : never;
}[keyof Specs];

/** What is wrong with the value of one field: outside its range, not whole, or not one of its names. */
export function fieldFaults(pointer: string, given: unknown, spec: FieldSpec): Fault[] {
  if (given === undefined && spec.optional) return [];
  switch (spec.type) {
    case "measure": {
      const isWhole = spec.unit !== "count" || Number.isInteger(given);
      return rangeFaults(pointer, typeof given === "number" && isWhole ? given : Number.NaN, spec);
    }
    case "choice": {
      if (typeof given === "string" && spec.names.includes(given)) return [];
      return [{ pointer, code: "unknown-choice", values: { names: spec.names } }];
    }
    case "flag": {
      if (typeof given === "boolean") return [];
      return [{ pointer, code: "unknown-choice", values: { names: ["true", "false"] } }];
    }
  }
}

/** What is wrong with the fields of a record, each by itself as `faultsOf` finds it. `pointer` is the record's own. */
export function recordFaults<Spec>(
  pointer: string,
  given: Readonly<Record<string, unknown>>,
  fields: Readonly<Record<string, Spec>>,
  faultsOf: (pointer: string, given: unknown, spec: Spec) => readonly Fault[],
): Fault[] {
  const faults: Fault[] = [];
  // Every plan comes through here: the names are walked without making pairs of them.
  for (const name of Object.keys(fields)) {
    const spec = fields[name];
    if (spec !== undefined) faults.push(...faultsOf(`${pointer}/${name}`, given[name], spec));
  }
  return faults;
}

/** A required length in mm between two bounds. */
export function lengthMm(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "mm", min, max, meaning, optional: false } as const;
}

/** A length in mm that may be absent. */
export function optionalLengthMm(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "mm", min, max, meaning, optional: true } as const;
}

/** A required angle in degrees between two bounds. */
export function angleDeg(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "deg", min, max, meaning, optional: false } as const;
}

/** An angle in degrees that may be absent. */
export function optionalAngleDeg(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "deg", min, max, meaning, optional: true } as const;
}

/** A whole number of things. */
export function count(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "count", min, max, meaning, optional: false } as const;
}

/** A whole number of things that may be absent. */
export function optionalCount(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "count", min, max, meaning, optional: true } as const;
}

/** A ratio that may be absent. */
export function optionalRatio(meaning: string, min: number, max: number) {
  return { type: "measure", unit: "ratio", min, max, meaning, optional: true } as const;
}

/** A name out of a list. */
export function choice<const Name extends string>(meaning: string, names: readonly Name[]) {
  return { type: "choice", names, meaning, optional: false } as const;
}

/** A name out of a list that may be absent. */
export function optionalChoice<const Name extends string>(meaning: string, names: readonly Name[]) {
  return { type: "choice", names, meaning, optional: true } as const;
}

/** True or false; absent is false. */
export function optionalFlag(meaning: string) {
  return { type: "flag", meaning, optional: true } as const;
}
