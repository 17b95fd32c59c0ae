import { type SQL, type SQLWrapper, sql } from "drizzle-orm";
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

/** The ids of the courses that a person takes part in, as a subquery's rows. */
export function coursesOf(personId: SQLWrapper): SQL {
  const { column, table } = enrolmentKind;
  return sql`SELECT ${column("courseId")} FROM ${table} WHERE ${column("personId")} = ${personId} AND ${column("endedAt")} IS NULL`;
}
