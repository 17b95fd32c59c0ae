import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { PersonRecordSchema } from "./schema.ts";

export const personKind = defineKind({
  type: "person",
  noun: "person",
  idPrefix: "person",
  path: "/v1/people",
  tag: { name: "people", description: "Who uses the shop." },
  schema: PersonRecordSchema,
  privateFields: ["name", "externalId", "notes"],
  table: "people",
});

export const people = recordQueries(personKind);
