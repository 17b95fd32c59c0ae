import { ROUTER_RANGES } from "@rimwise/domain";
import Type, { type Static } from "typebox";
import { HoldSchema } from "../bits/state-schema.ts";
import {
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

export const COLLET_CONDITIONS = ["good", "worn", "held", "retired"] as const;

const colletFields = {
  name: nameField("1/2 in collet of the table router"),
  diameterMm: Type.Number({
    ...within(ROUTER_RANGES.colletDiametersMm),
    description: "Shank diameter it is made for.",
  }),
  condition: Type.Enum([...COLLET_CONDITIONS], {
    type: "string",
    description: "Only a collet that is `good` or `worn` may hold a bit.",
  }),
  notes: Type.Optional(notesField),
};

export const NewColletSchema = Type.Object(
  { ...colletFields, routerId: referenceField("the router it belongs to") },
  { $id: "NewCollet", description: "A collet of a router.", additionalProperties: false },
);

const changeable = Type.Object(colletFields);

export const ColletChangeSchema = patchSchema<Static<typeof changeable>>(
  "ColletChange",
  changeable,
  "What to change of a collet. Another condition than `held` ends a hold.",
);

export const ColletSchema = Type.Object(
  {
    id: idField("collet"),
    routerId: Type.String({ description: "The router it belongs to." }),
    ...colletFields,
    hold: Type.Optional(ref(HoldSchema)),
    ...keptFields,
  },
  { $id: "Collet", description: "A collet of a router.", additionalProperties: false },
);

export const ColletPageSchema = pageSchema("ColletPage", ref(ColletSchema), "Collets, oldest first.");

/** The components this resource answers and takes. */
export const COLLET_SCHEMAS = [NewColletSchema, ColletChangeSchema, ColletSchema, ColletPageSchema];

export type NewCollet = Static<typeof NewColletSchema>;
export type ColletChange = PatchOf<Static<typeof changeable>>;

export type ColletRecord = Static<typeof ColletSchema>;
