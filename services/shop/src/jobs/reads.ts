import { or, sql } from "drizzle-orm";
import { inOwnCourses } from "../enrolments/reads.ts";
import { ownOnly, restrictedQueries, type VisibleTo } from "../store/record-queries.ts";
import { jobKind } from "./kind.ts";

const isOwn = ownOnly(jobKind);
const isOfOwnCourse = inOwnCourses(jobKind.column("courseId"));

/** Whoever is not in charge sees their own jobs and those of their courses. */
const isVisible: VisibleTo = (personId, dialect) =>
  or(isOwn(personId, dialect), isOfOwnCourse(personId, dialect)) ?? sql`FALSE`;

export const jobs = restrictedQueries(jobKind, isVisible);
