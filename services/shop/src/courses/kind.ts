import { defineKind } from "../store/kind.ts";
import { recordQueries } from "../store/record-queries.ts";
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

export const courses = recordQueries(courseKind);
