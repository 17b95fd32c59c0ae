import type { FastifyRequest } from "fastify";
import { callerOf } from "../access/caller.ts";
import { enrolments } from "../enrolments/kind.ts";
import { Problem } from "../problems/problem.ts";
import type { Question } from "../store/query.ts";

/** Refuses who does not teach a course. A manager may in every course. Returns who acts. */
export function* requireInstructor(request: FastifyRequest, courseId: string): Question<string> {
  const { role, personId, keyId } = callerOf(request);
  if (role === "manager") return personId ?? keyId;
  if (personId !== undefined && (yield* teaches(personId, courseId))) return personId;
  throw new Problem("not-yours", "Only an instructor of this course, or a manager, may do this.");
}

/** Refuses who is no manager: an instructor does not end the rule that watches them. */
export function requireManager(request: FastifyRequest): void {
  if (callerOf(request).role === "manager") return;
  throw new Problem("not-yours", "Only a manager may say that one person is enough.");
}

/** Whether a person teaches in a course now. */
export function* teaches(personId: string, courseId: string): Question<boolean> {
  const [own] = yield* enrolments.page("", 1, { courseId, personId, endedAt: null });
  return own?.part === "instructor";
}
