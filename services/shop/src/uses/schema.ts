import Type, { type Static } from "typebox";
import { idField, keptFields, momentField, notesField, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

/** What may happen in a cut. */
export const USE_OUTCOMES = ["fine", "scorched", "chattered", "tore-out", "came-loose"] as const;

export type UseOutcome = (typeof USE_OUTCOMES)[number];

const measures = {
  metres: Type.Number({ minimum: 0, maximum: 100_000, description: "Length cut, all passes together." }),
  minutes: Type.Number({ minimum: 0, maximum: 100_000, description: "Time the bit was running." }),
  outcomes: Type.Array(Type.Enum([...USE_OUTCOMES], { type: "string" }), {
    minItems: 1,
    maxItems: USE_OUTCOMES.length,
    uniqueItems: true,
    description:
      "What happened. `came-loose`: the bit moved in the collet, so both are held. `fine` stands alone.",
  }),
  withoutLoanReason: Type.Optional(
    Type.String({
      minLength: 1,
      maxLength: 300,
      pattern: "\\S",
      description:
        "Why somebody who is not in charge used a bit that was not on loan to them; needed then. Shown to whoever is in charge.",
    }),
  ),
  notes: Type.Optional(notesField),
};

export const NewUseSchema = Type.Object(
  {
    planId: Type.Optional(
      referenceField("the stored plan that was done; it names the bit, the router and the wood"),
    ),
    bitId: Type.Optional(referenceField("the bit, without a plan")),
    routerId: Type.Optional(referenceField("the router, without a plan")),
    woodId: Type.Optional(referenceField("the wood, without a plan")),
    colletId: Type.Optional(referenceField("the collet it was clamped in")),
    doneAt: Type.Optional(momentField("When it was done; default: now.")),
    ...measures,
  },
  {
    $id: "NewUse",
    description: "Work that was done: with a stored plan, or with a bit, a router and a wood.",
    additionalProperties: false,
  },
);

export const UseSchema = Type.Object(
  {
    id: idField("use"),
    bitId: Type.String({ description: "The bit." }),
    routerId: Type.String({ description: "The router." }),
    woodId: Type.String({ description: "The wood." }),
    planId: Type.Optional(Type.String({ description: "The plan that was done." })),
    colletId: Type.Optional(Type.String({ description: "The collet it was clamped in." })),
    personId: Type.Optional(referenceField("who did it")),
    doneAt: momentField("When it was done."),
    ...measures,
    ...keptFields,
  },
  { $id: "Use", description: "Work that was done with a bit.", additionalProperties: false },
);

export const UsePageSchema = pageSchema("UsePage", ref(UseSchema), "Uses, oldest entry first.");

/** The components this resource answers and takes. */
export const USE_SCHEMAS = [NewUseSchema, UseSchema, UsePageSchema];

export type NewUse = Static<typeof NewUseSchema>;

export type UseRecord = Static<typeof UseSchema>;
