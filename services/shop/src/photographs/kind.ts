import { defineKind } from "../store/kind.ts";
import { PhotographRecordSchema, PhotographSchema } from "./schema.ts";

export const photographKind = defineKind({
  type: "photograph",
  noun: "photograph",
  idPrefix: "photograph",
  path: "/v1/photographs",
  tag: { name: "photographs", description: "Photographs of bits." },
  schema: PhotographRecordSchema,
  shown: PhotographSchema,
  table: "photographs",
});
