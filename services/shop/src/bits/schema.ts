import { BIT_RANGES, type Bit } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { idField, keptFields, nameField, notesField, type PatchOf, patchSchema } from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import type { Kept } from "../store/records.ts";
import { FORM_SCHEMAS, FormSchema } from "./form-schema.ts";
import { GIVEN_SEGMENT_SCHEMAS } from "./segment-schema.ts";

/** A bit as it is kept: what a plan needs, with its name. */
export type BitRecord = Kept & NewBit;

export type NewBit = Bit & { readonly name: string; readonly notes?: string };

const bitFields = {
  form: ref(FormSchema),
  shankDiameterMm: Type.Number({
    ...within(BIT_RANGES.shankDiameterMm),
    description: "Diameter of the shank.",
  }),
  wings: Type.Integer({ ...within(BIT_RANGES.wings), description: "Cutting wings (flutes)." }),
  massG: Type.Optional(
    Type.Number({ ...within(BIT_RANGES.massG), description: "Weighed mass. It wins over the estimate." }),
  ),
  runOutMm: Type.Optional(
    Type.Number({
      ...within(BIT_RANGES.runOutMm),
      description: "Total indicator run-out measured in its collet.",
    }),
  ),
  stickOutMm: Type.Optional(
    Type.Number({
      ...within(BIT_RANGES.stickOutMm),
      description: "Shank showing between the collet and the head.",
    }),
  ),
  markedMaxRpm: Type.Optional(
    Type.Number({
      ...within(BIT_RANGES.markedMaxRpm),
      description: "The greatest speed marked on the tool. Never exceeded.",
    }),
  ),
};

const namedFields = {
  name: nameField("Raised panel, 89 mm"),
  notes: Type.Optional(notesField),
  ...bitFields,
};

/** A bit without a name: what a plan is computed from. */
export const BitInputSchema = Type.Object(bitFields, {
  $id: "BitInput",
  description: "A bit by its geometry and markings alone.",
  additionalProperties: false,
});

export const NewBitSchema = Type.Object(namedFields, {
  $id: "NewBit",
  description: "A bit to put on the rack.",
  additionalProperties: false,
});

export const BitChangeSchema = patchSchema<NewBit>(
  "BitChange",
  NewBitSchema,
  "What to change of a bit. A given field replaces the old one whole; null removes one that may be left out.",
);

export const BitSchema = Type.Object(
  { id: idField("bit"), ...namedFields, ...keptFields },
  { $id: "Bit", description: "A bit on the rack.", additionalProperties: false },
);

export const BitPageSchema = pageSchema("BitPage", ref(BitSchema), "Bits, oldest first.");

/** The components this resource answers and takes. */
export const BIT_SCHEMAS = [
  ...GIVEN_SEGMENT_SCHEMAS,
  ...FORM_SCHEMAS,
  FormSchema,
  NewBitSchema,
  BitChangeSchema,
  BitSchema,
  BitPageSchema,
];

export type BitInput = Static<typeof BitInputSchema>;
export type BitChange = PatchOf<NewBit>;
