import Type, { type Static, type TUnsafe } from "typebox";
import { ref } from "../http/reference.ts";
import type { Component } from "../http/routes.ts";
import { type PlanAnswer, PlanAnswerSchema, PlanPartsSchema } from "./answer-schema.ts";

const FIELDS = Object.keys(PlanPartsSchema.properties);

/** The query parameter that asks for parts of plans. */
export const FieldsQuery = {
  fields: Type.Optional(
    Type.Array(Type.Enum(FIELDS, { type: "string" }), {
      minItems: 1,
      maxItems: FIELDS.length,
      description:
        "Answers these fields of the plan alone, with commas between them, such as `speed,passes`; verdict and advice always come along. Default: all.",
    }),
  ),
};

/** What of a plan was asked for: all of it, or some fields. */
export type FieldsAsked = Static<(typeof FieldsQuery)["fields"]> | undefined;

/** A plan, or those fields of it that were asked for. */
export type PlanOrParts = PlanAnswer | Static<typeof PlanPartsSchema>;

/** The fields of a plan that were asked for, in the plan's order, with its verdict and advice. */
export function partsOf(plan: PlanAnswer, fields: FieldsAsked): PlanOrParts {
  if (fields === undefined) return plan;
  const { verdict, advice } = plan;
  const asked = Object.entries(plan).filter(([name]) => fields.includes(name));
  return { verdict, ...Object.fromEntries(asked), advice };
}

/** An answer with whole plans, or the same with the fields that were asked for. */
export function wholeOrParts<Answer>($id: string, whole: Component, parts: Component): TUnsafe<Answer> {
  const description = `${whole.$id}; with \`fields\`, ${parts.$id}.`;
  return Type.Unsafe<Answer>({ $id, anyOf: [ref(whole), ref(parts)], description });
}

export const PlanOrPartsSchema = wholeOrParts<PlanOrParts>("PlanOrParts", PlanAnswerSchema, PlanPartsSchema);
