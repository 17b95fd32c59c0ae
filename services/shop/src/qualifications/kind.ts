import { defineKind } from "../store/kind.ts";
import { ownOnly, restrictedQueries } from "../store/record-queries.ts";
import { QualificationSchema } from "./schema.ts";

export const qualificationKind = defineKind({
  type: "qualification",
  noun: "qualification",
  idPrefix: "qualification",
  path: "/v1/qualifications",
  tag: { name: "qualifications", description: "What people were tested on, showed and were allowed." },
  schema: QualificationSchema,
  privateFields: ["notes"],
  table: "qualifications",
});

export const qualifications = restrictedQueries(qualificationKind, ownOnly(qualificationKind));
