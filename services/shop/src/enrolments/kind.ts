import { defineKind } from "../store/kind.ts";
import { ownOnly, restrictedQueries } from "../store/record-queries.ts";
import { EnrolmentSchema } from "./schema.ts";

export const enrolmentKind = defineKind({
  type: "enrolment",
  noun: "enrolment",
  idPrefix: "enrolment",
  path: "/v1/enrolments",
  tag: { name: "enrolments", description: "Who teaches and who learns in a course." },
  schema: EnrolmentSchema,
  table: "enrolments",
});

export const enrolments = restrictedQueries(enrolmentKind, ownOnly(enrolmentKind));
