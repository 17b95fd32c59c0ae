import type { FastifyRequest } from "fastify";
import { requirePerson } from "../access/caller.ts";
import { requireInstructor } from "../courses/access.ts";
import type { CourseRecord } from "../courses/schema.ts";
import type { PlanRecord } from "../plans/schema.ts";
import type { Decision } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import { draftApproval, woodsOf } from "./decide.ts";
import { groundsAt } from "./grounds.ts";
import { approvalKind, groundsKind } from "./kind.ts";
import { measuredUntil } from "./measured-until.ts";
import type { ApprovalRecord } from "./record-schema.ts";
import { resultOn } from "./result.ts";
import type { NewApproval } from "./schema.ts";

/** Who drafts settings in a course. Refuses who may not: everybody but its instructors, and a program where two persons are needed. */
export function* requireDrafter(request: FastifyRequest, course: CourseRecord): Question<string> {
  const by = yield* requireInstructor(request, course.id);
  if (course.isTwoPerson) requirePerson(request, "In this course a person drafts, not a program.");
  return by;
}

/** The draft of a setting from a plan, computed again under the course's policy. */
export function* draftFrom(
  plan: PlanRecord,
  given: NewApproval,
  course: CourseRecord,
  by: string,
  at: string,
): Question<Decision<ApprovalRecord>> {
  const grounds = yield* groundsAt(at)(plan.request, woodsOf(plan, given), course.id);
  const until = yield* measuredUntil(grounds, at);
  return draftApproval(newApprovalIds(), given, plan, course, resultOn(grounds), until, by, at);
}

/** Ids of an approval and of what it was made from. */
export function newApprovalIds() {
  return { approvalId: newId(approvalKind.idPrefix), groundsId: newId(groundsKind.idPrefix) };
}
