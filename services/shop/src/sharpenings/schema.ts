import { BIT_RANGES, type Form } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { FormSchema } from "../bits/form-schema.ts";
import { idField, keptFields, momentField, notesField, referenceField } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { BIT_FINDINGS } from "../inspections/schema.ts";

/** What a sharpening changes of a bit. */
export type BitDimensions = { readonly form: Form; readonly massG?: number };

const repaired = Type.Optional(
  Type.Array(Type.Enum([...BIT_FINDINGS], { type: "string" }), {
    maxItems: BIT_FINDINGS.length,
    uniqueItems: true,
    description:
      "Damage that was repaired with it. A cracked braze or a bent shank keeps a bit held until it is named here.",
  }),
);
const mass = Type.Optional(Type.Number({ ...within(BIT_RANGES.massG), description: "Weighed mass." }));

export const NewSharpeningSchema = Type.Object(
  {
    sharpenedAt: Type.Optional(momentField("When it was done; default: now.")),
    diameterMm: Type.Optional(
      Type.Number({ exclusiveMinimum: 0, maximum: 200, description: "Diameter after, over the edges." }),
    ),
    form: Type.Optional(ref(FormSchema)),
    massG: mass,
    repaired,
    notes: Type.Optional(notesField),
  },
  {
    $id: "NewSharpening",
    description:
      "A bit came back sharpened, with what was measured: its diameter, or if more changed, its whole form. Neither: only the edge was touched.",
    additionalProperties: false,
  },
);

const DimensionsSchema = Type.Object(
  { form: ref(FormSchema), massG: mass },
  { $id: "BitDimensions", description: "What a sharpening changes of a bit.", additionalProperties: false },
);

export const SharpeningSchema = Type.Object(
  {
    id: idField("sharpening"),
    bitId: Type.String({ description: "The bit." }),
    personId: Type.Optional(referenceField("who entered it")),
    sharpenedAt: momentField("When it was done."),
    before: ref(DimensionsSchema),
    after: ref(DimensionsSchema),
    lifeEquivalentM: Type.Number({
      minimum: 0,
      description: "What the edge had cut until then, as metres of solid wood of middling density.",
    }),
    repaired,
    notes: Type.Optional(notesField),
    ...keptFields,
  },
  { $id: "Sharpening", description: "One sharpening of a bit.", additionalProperties: false },
);

export const SharpeningPageSchema = pageSchema(
  "SharpeningPage",
  ref(SharpeningSchema),
  "Sharpenings, oldest first.",
);

/** The components this resource answers and takes. */
export const SHARPENING_SCHEMAS = [
  NewSharpeningSchema,
  DimensionsSchema,
  SharpeningSchema,
  SharpeningPageSchema,
];

export type NewSharpening = Static<typeof NewSharpeningSchema>;

export type SharpeningRecord = Static<typeof SharpeningSchema>;
