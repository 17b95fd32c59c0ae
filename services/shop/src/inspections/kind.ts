import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
import { InspectionSchema } from "./schema.ts";

export const inspectionKind = defineKind({
  type: "inspection",
  noun: "inspection",
  idPrefix: "inspection",
  path: "/v1/inspections",
  tag: { name: "inspections", description: "What was found on bits, and what follows." },
  schema: InspectionSchema,
  table: "inspections",
});

export const inspections = recordQueries(inspectionKind);
