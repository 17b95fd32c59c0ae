import type { FastifyRequest } from "fastify";
import { draftFrom, requireDrafter } from "../approvals/draft.ts";
import { courses } from "../courses/kind.ts";
import { requireOne } from "../http/named-records.ts";
import type { Decided } from "../http/write-routes.ts";
import { computedPlan } from "../plans/compute.ts";
import { keepPlan } from "../plans/decide.ts";
import { planKind } from "../plans/kind.ts";
import type { PlanRequest } from "../plans/schema.ts";
import { Problem } from "../problems/problem.ts";
import { newId } from "../store/id.ts";
import type { Change } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import type { JobApprovals, JobApprovalsMade } from "./act-schema.ts";
import type { JobRecord } from "./schema.ts";

/** A job has a dozen settings; a class cannot look through more drafts at once. */
const MOST_DRAFTS = 50;

const LONGEST_NAME = 100;

/**
 * A stored plan and the draft of an approval for each different cut of a job: one for each bit, router and setting. Throws a problem for a
 * job whose cuts may not all be run.
 */
export function* draftJobApprovals(
  job: JobRecord,
  body: JobApprovals,
  request: FastifyRequest,
  at: string,
): Question<Decided<JobApprovalsMade>> {
  const course = yield* requireOne("/courseId", body.courseId, courses);
  const by = yield* requireDrafter(request, course);
  const changes: Change[] = [];
  const approvals: JobApprovalsMade["approvals"] = [];
  for (const { name, asked } of differentPlans(job)) {
    const plan = yield* computedPlan(asked, {}, { at, mayReadBits: true });
    const kept = keepPlan(newId(planKind.idPrefix), { name, ...asked }, plan, at);
    const { courseId: _course, ...conditions } = body;
    const given = { name, courseId: course.id, planId: kept.record.id, ...conditions };
    const draft = yield* draftFrom(kept.record, given, course, by, at);
    changes.push(...kept.changes, ...draft.changes);
    approvals.push({ approvalId: draft.record.id, planId: kept.record.id, name });
  }
  return { changes, answer: { approvals } };
}

/** The plans of a job, those of alike settings once: the first part that is cut so stands for the others. */
function differentPlans(job: JobRecord): { readonly name: string; readonly asked: PlanRequest }[] {
  const plans = new Map<string, { readonly name: string; readonly asked: PlanRequest }>();
  for (const { part, request, mark, rpm, passes, bitId, routerId } of job.work.cuts) {
    if (request === null) {
      throw new Problem(
        "job-not-ready",
        "Some of its cuts have no plan. Settings are drafted from a whole job.",
      );
    }
    const { cut, mounting, woodId } = request;
    const { edges: _edges, work: _work, ...settings } = cut;
    const alike = JSON.stringify([bitId, routerId, mounting, woodId, mark, rpm, passes, settings]);
    const name = `${job.name}: ${job.parts[part - 1]?.name ?? ""}`.slice(0, LONGEST_NAME);
    if (!plans.has(alike)) plans.set(alike, { name, asked: request });
  }
  if (plans.size <= MOST_DRAFTS) return [...plans.values()];
  throw new Problem(
    "job-not-ready",
    `It has ${plans.size} different settings, and ${MOST_DRAFTS} are drafted at once.`,
  );
}
