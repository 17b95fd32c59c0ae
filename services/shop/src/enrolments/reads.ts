import { type SQL, type SQLWrapper, sql } from "drizzle-orm";
import type { VisibleTo } from "../store/record-queries.ts";
import { enrolmentKind } from "./kind.ts";

/** The ids of the courses that a person takes part in, as a subquery's rows. */
function coursesOf(personId: SQLWrapper): SQL {
  const { column, table } = enrolmentKind;
  return sql`SELECT ${column("courseId")} FROM ${table} WHERE ${column("personId")} = ${personId} AND ${column("endedAt")} IS NULL`;
}

/** What belongs to a course, by the column that names it: visible to whoever takes part in that course. */
export function inOwnCourses(courseId: SQLWrapper): VisibleTo {
  return (personId) => sql`${courseId} IN (${coursesOf(personId)})`;
}
