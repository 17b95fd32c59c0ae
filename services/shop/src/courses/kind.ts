import { inOwnCourses } from "../enrolments/reads.ts";
import { defineKind } from "../store/kind.ts";
import { restrictedQueries } from "../store/record-queries.ts";
import { CourseSchema } from "./schema.ts";

export const courseKind = defineKind({
  type: "course",
  noun: "course",
  idPrefix: "course",
  path: "/v1/courses",
  tag: { name: "courses", description: "Courses, and what a class sees of itself." },
  schema: CourseSchema,
  table: "courses",
});

/** Whoever is not in charge sees the courses they take part in. */
export const courses = restrictedQueries(courseKind, inOwnCourses(courseKind.column("id")));
