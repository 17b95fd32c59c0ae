import { BIT_RANGES, TOOTH_MATERIALS } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import {
  externalIdField,
  idField,
  keptFields,
  nameField,
  notesField,
  type PatchOf,
  patchSchema,
  referenceField,
} from "../http/fields.ts";
import { pageSchema } from "../http/paging.ts";
import { within } from "../http/range.ts";
import { ref } from "../http/reference.ts";
import { FORM_SCHEMAS, FormSchema } from "./form-schema.ts";
import { GIVEN_SEGMENT_SCHEMAS } from "./segment-schema.ts";
import { BitUseSchema, bitStateFields, HoldSchema, RetirementSchema } from "./state-schema.ts";

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
  isEndCutting: Type.Optional(
    Type.Boolean({
      description:
        "Whether it cuts at its end, so that it may be plunged. Default: not known, and then it is not.",
    }),
  ),
  markedMaxRpm: Type.Optional(
    Type.Number({
      ...within(BIT_RANGES.markedMaxRpm),
      description: "The greatest speed marked on the tool. Never exceeded.",
    }),
  ),
};

const CostSchema = Type.Object(
  {
    amount: Type.Number({ minimum: 0, maximum: 1_000_000, description: "How much." }),
    currency: Type.String({ pattern: "^[A-Z]{3}$", description: "an ISO 4217 code, such as EUR" }),
  },
  { $id: "Cost", description: "What it cost.", additionalProperties: false },
);

const namedFields = {
  name: nameField("Raised panel, 89 mm"),
  externalId: Type.Optional(externalIdField),
  setName: Type.Optional(
    Type.String({
      minLength: 1,
      maxLength: 100,
      pattern: "\\S",
      description:
        "The set it belongs to, such as that of a cope and its stick: bits of one set have its name in common, and are sharpened together.",
      examples: ["Cope and stick 1"],
    }),
  ),
  notes: Type.Optional(notesField),
  ...bitFields,
  isHandFeedMarked: Type.Optional(
    Type.Boolean({ description: "Whether it is marked for hand feed (MAN, as EN 847-1 has it)." }),
  ),
  toothMaterial: Type.Optional(
    Type.Enum([...TOOTH_MATERIALS], { type: "string", description: "What its edges are made of." }),
  ),
  purchasedOn: Type.Optional(Type.String({ format: "date", description: "When it was bought." })),
  cost: Type.Optional(ref(CostSchema)),
  smallestUsableDiameterMm: Type.Optional(
    Type.Number({
      exclusiveMinimum: 0,
      maximum: 200,
      description: "Sharpened below this it is no longer to be used.",
    }),
  ),
  homePlaceId: Type.Optional(referenceField("the place it belongs to")),
  inspectionIntervalDays: Type.Optional(
    Type.Integer({ minimum: 1, maximum: 3650, description: "Days from one inspection to the next." }),
  ),
  inspectionIntervalM: Type.Optional(
    Type.Number({ exclusiveMinimum: 0, maximum: 1_000_000, description: "Metres cut between inspections." }),
  ),
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

export const BitChangeSchema = patchSchema<Static<typeof NewBitSchema>>(
  "BitChange",
  NewBitSchema,
  "What to change of a bit. A given field replaces the old one whole; null removes one that is optional.",
);

export const BitSchema = Type.Object(
  { id: idField("bit"), ...namedFields, ...bitStateFields, ...keptFields },
  { $id: "Bit", description: "A bit on the rack.", additionalProperties: false },
);

export const BitNumberSchema = Type.Object(
  {
    bitId: Type.String({ description: "The bit." }),
    number: Type.Integer({
      minimum: 1,
      description:
        "The short number that the shop knows it by: to be written on it, so that two of a kind can be told apart. It lasts as long as the bit is kept, and no two have the same.",
    }),
  },
  { $id: "BitNumber", description: "A bit's number of the shop's own.", additionalProperties: false },
);

export const BitPageSchema = pageSchema("BitPage", ref(BitSchema), "Bits, oldest first.");

/** The components this resource answers and takes. */
export const BIT_SCHEMAS = [
  ...GIVEN_SEGMENT_SCHEMAS,
  ...FORM_SCHEMAS,
  FormSchema,
  CostSchema,
  HoldSchema,
  RetirementSchema,
  BitUseSchema,
  NewBitSchema,
  BitChangeSchema,
  BitNumberSchema,
  BitSchema,
  BitPageSchema,
];

/** The fields a bit can be created and changed by, in the order they are listed. */
export const BIT_FIELD_NAMES: readonly string[] = Object.keys(namedFields);

export type NewBit = Static<typeof NewBitSchema>;
export type BitInput = Static<typeof BitInputSchema>;
export type BitChange = PatchOf<NewBit>;

/** A bit as it is kept: what a plan needs, what the shop wants to know, and where it stands. */
export type BitRecord = Static<typeof BitSchema>;
