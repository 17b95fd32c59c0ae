import Type, { type Static } from "typebox";
import {
  idField,
  keptFields,
  nameField,
  notesField,
  type PatchOf,
  patchSchema,
  referenceField,
} from "../http/fields.ts";
import { manyCreatedSchema, manySchema } from "../http/many-schema.ts";
import { pageSchema } from "../http/paging.ts";
import { ref } from "../http/reference.ts";

export const PLACE_KINDS = ["room", "cabinet", "rack", "drawer", "position"] as const;

const placeFields = {
  name: nameField("Rack 2, position 14"),
  kind: Type.Enum([...PLACE_KINDS], { type: "string", description: "What it is." }),
  insideId: Type.Optional(referenceField("the place it is inside")),
  notes: Type.Optional(notesField),
};

export const NewPlaceSchema = Type.Object(placeFields, {
  $id: "NewPlace",
  description: "A place to keep bits.",
  additionalProperties: false,
});

/** Most places of one request: a shop's, position by position. */
export const MOST_NEW_PLACES = 500;

export const ListedPlaceSchema = Type.Object(
  {
    ...placeFields,
    insideNumber: Type.Optional(
      Type.Integer({
        minimum: 1,
        maximum: MOST_NEW_PLACES,
        description: "The place of this list that it is inside, counted from 1: one named before it.",
      }),
    ),
  },
  { $id: "ListedPlace", description: "One of many places to keep bits.", additionalProperties: false },
);

export const PlaceChangeSchema = patchSchema<Static<typeof NewPlaceSchema>>(
  "PlaceChange",
  NewPlaceSchema,
  "What to change of a place. Null takes it out of what it is inside.",
);

export const PlaceSchema = Type.Object(
  { id: idField("place"), ...placeFields, ...keptFields },
  { $id: "Place", description: "A place where bits are kept.", additionalProperties: false },
);

export const PlacePageSchema = pageSchema("PlacePage", ref(PlaceSchema), "Places, oldest first.");

/** Most bits of a place that are counted at once, and that one answer lists. */
export const MOST_BITS_COUNTED = 2000;

export const StockTakeSchema = Type.Object(
  {
    bitIds: Type.Array(referenceField("a bit that was seen here"), {
      maxItems: MOST_BITS_COUNTED,
      description: "Every bit that was seen at this place; inside it too.",
    }),
  },
  { $id: "StockTake", description: "What somebody saw at a place.", additionalProperties: false },
);

const bitIds = (description: string) => Type.Array(Type.String(), { description });

export const PlaceContentsSchema = Type.Object(
  {
    placeId: Type.String({ description: "The place." }),
    here: bitIds("Bits that are here and belong here."),
    misplaced: bitIds("Bits that are here and belong elsewhere."),
    away: Type.Array(
      Type.Object(
        {
          bitId: Type.String({ description: "The bit." }),
          state: Type.String({ description: "Why: on loan, at sharpening, …" }),
          placeId: Type.Optional(Type.String({ description: "Where it was last seen." })),
        },
        { additionalProperties: false },
      ),
      { description: "Bits that belong here and are known to be elsewhere." },
    ),
    missing: bitIds("Bits that belong here, should be here, and were not seen at the last count."),
    names: Type.Record(Type.String(), Type.String(), {
      description: "What each of these bits is called, by its id.",
    }),
    isComplete: Type.Boolean({ description: "False if the place has more bits than one answer lists." }),
  },
  { $id: "PlaceContents", description: "What is where, and what should be.", additionalProperties: false },
);

export const NewPlacesSchema = manySchema("NewPlaces", ListedPlaceSchema, MOST_NEW_PLACES);
export const NewPlacesAnswerSchema = manyCreatedSchema("CreatedPlaces", PlaceSchema);

/** The components this resource answers and takes. */
export const PLACE_SCHEMAS = [
  ListedPlaceSchema,
  NewPlacesSchema,
  NewPlacesAnswerSchema,
  NewPlaceSchema,
  PlaceChangeSchema,
  PlaceSchema,
  PlacePageSchema,
  StockTakeSchema,
  PlaceContentsSchema,
];

export type NewPlace = Static<typeof NewPlaceSchema>;
export type ListedPlace = Static<typeof ListedPlaceSchema>;
export type PlaceChange = PatchOf<Static<typeof NewPlaceSchema>>;
export type PlaceContents = Static<typeof PlaceContentsSchema>;

/** Where bits are kept. Places nest: a position in a drawer in a room. */
export type PlaceRecord = Static<typeof PlaceSchema>;
