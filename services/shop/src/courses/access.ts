import type { FastifyRequest } from "fastify";
import { callerOf } from "../access/caller.ts";
import { enrolments } from "../enrolments/kind.ts";
import type { EnrolmentRecord } from "../enrolments/schema.ts";
import { Problem } from "../problems/problem.ts";
import type { Question } from "../store/query.ts";

/** A course has some hundred people, a person some dozen courses. */
const MOST_ENROLMENTS = 2000;

/** Refuses who does not teach a course. A manager may in every course. Returns who acts. */
export function* requireInstructor(request: FastifyRequest, courseId: string): Question<string> {
  const { role, personId, keyId } = callerOf(request);
  if (role === "manager") return personId ?? keyId;
  const parts = personId === undefined ? [] : yield* partsOf(personId);
  const teaches = parts.some((each) => each.courseId === courseId && each.part === "instructor");
  if (personId !== undefined && teaches) return personId;
  throw new Problem("not-yours", "Only an instructor of this course, or a manager, may do this.");
}

function partsOf(personId: string): Question<EnrolmentRecord[]> {
  return enrolments.page("", MOST_ENROLMENTS, { personId, endedAt: null });
}
