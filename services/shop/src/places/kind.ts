import { defineKind } from "../store/kind.ts";
import { PlaceSchema } from "./schema.ts";

export const placeKind = defineKind({
  type: "place",
  noun: "place",
  idPrefix: "place",
  path: "/v1/places",
  tag: { name: "places", description: "Where bits are kept, what is there and what is missing." },
  schema: PlaceSchema,
  table: "places",
});
