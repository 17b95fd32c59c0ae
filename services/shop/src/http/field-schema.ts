import type { FieldSpec } from "@rimwise/domain";
import Type, { type TSchema } from "typebox";
import { within } from "./range.ts";

/** A field of the domain as JSON Schema: its bounds or names, and its meaning. */
export function fieldSchema(spec: FieldSpec): TSchema {
  const { meaning: description } = spec;
  switch (spec.type) {
    case "choice":
      return Type.Enum([...spec.names], { type: "string", description });
    case "flag":
      return Type.Boolean({ description });
    case "measure": {
      const bounds = { ...within(spec), description };
      return spec.unit === "count" ? Type.Integer(bounds) : Type.Number(bounds);
    }
  }
}

/** The properties of a record described field by field. */
export function fieldProperties<Spec extends { readonly optional: boolean }>(
  fields: Readonly<Record<string, Spec>>,
  schemaOf: (spec: Spec) => TSchema,
): Record<string, TSchema> {
  const properties = Object.entries(fields).map(([name, spec]) => [
    name,
    spec.optional ? Type.Optional(schemaOf(spec)) : schemaOf(spec),
  ]);
  return Object.fromEntries(properties);
}

/** The name of a kind's component: `round-over` and "Form" give `RoundOverForm`. */
export function componentName(kind: string, of: "Form" | "Cut" | "CutSettings"): string {
  const words = kind.split("-").map((word) => word.charAt(0).toUpperCase() + word.slice(1));
  return words.join("") + of;
}
