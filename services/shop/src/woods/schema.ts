import type { Wood } from "@rimwise/domain";
import Type from "typebox";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";

const PROVENANCES = ["looked-up", "looked-up-secondary", "derived", "memory"];

export const SourcedNumberSchema = Type.Object(
  {
    value: Type.Number({ description: "The number, in the unit its field names." }),
    provenance: Type.Enum(PROVENANCES, {
      type: "string",
      description:
        "How it came here: read on the source itself, on a page that quotes it, computed from such numbers, or remembered and not checked.",
    }),
  },
  { $id: "SourcedNumber", description: "A number and how it came here.", additionalProperties: false },
);

export const ByGrainSchema = Type.Object(
  { radial: ref(SourcedNumberSchema), tangential: ref(SourcedNumberSchema) },
  {
    $id: "ByGrain",
    description: "Across the grain: radial in a quartersawn board, tangential in a flatsawn one.",
    additionalProperties: false,
  },
);

const sharedFields = {
  id: Type.String({ description: "Its name in kebab-case, such as `black-cherry`." }),
  name: Type.String({ description: "What people call it." }),
  densityKgPerM3: ref(SourcedNumberSchema),
  hasGrain: Type.Boolean({ description: "Whether its edges differ by direction: end grain tears." }),
  isMeltable: Type.Boolean({ description: "Whether it softens and sticks to a bit that rubs." }),
};

const noteField = Type.String({ description: "What else to know of it." });

const madeFields = { ...sharedFields, note: noteField };

export const SpeciesSchema = Type.Object(
  {
    kind: Type.Literal("species", { description: "What it is." }),
    ...sharedFields,
    botanicalName: Type.String({ description: "Genus and species." }),
    group: Type.Enum(["domestic-hardwood", "domestic-softwood", "imported"], {
      type: "string",
      description: "The table it comes from.",
    }),
    sideHardnessN: ref(SourcedNumberSchema),
    changeCoefficient: ref(ByGrainSchema),
    shrinkagePercent: Type.Optional(ref(ByGrainSchema)),
    shrinkageStartsAtPercent: Type.Number({
      description: "Moisture content at which shrinkage is taken to start.",
    }),
    note: Type.Optional(noteField),
  },
  {
    $id: "Species",
    description:
      "Solid wood. Density at 12 % moisture content; the coefficients are ratios per percent of moisture.",
    additionalProperties: false,
  },
);

export const SheetSchema = Type.Object(
  { kind: Type.Literal("sheet", { description: "What it is." }), ...madeFields },
  { $id: "Sheet", description: "Sheet goods, taken as still.", additionalProperties: false },
);

export const PlasticSchema = Type.Object(
  { kind: Type.Literal("plastic", { description: "What it is." }), ...madeFields },
  { $id: "Plastic", description: "A plastic worked with wood bits.", additionalProperties: false },
);

export const WoodSchema = unionOf<Wood>(
  "Wood",
  "kind",
  [SpeciesSchema, SheetSchema, PlasticSchema],
  "What a bit cuts: one of species, sheet, plastic.",
);

export const WoodPageSchema = pageSchema("WoodPage", ref(WoodSchema), "Woods and materials, by id.");

/** The components this resource answers. */
export const WOOD_SCHEMAS = [
  SourcedNumberSchema,
  ByGrainSchema,
  SpeciesSchema,
  SheetSchema,
  PlasticSchema,
  WoodSchema,
  WoodPageSchema,
];
