import type { FastifyRequest } from "fastify";
import { callerOf, personAsked } from "../access/caller.ts";
import { bitKind } from "../bits/kind.ts";
import { courses } from "../courses/kind.ts";
import type { Admit } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import { actLongRoute, createLongRoute } from "../http/long-write-routes.ts";
import { requireNamed } from "../http/named-records.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute } from "../http/write-routes.ts";
import { people } from "../people/kind.ts";
import { reservations } from "../reservations/reads.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import { JobApprovalsMadeSchema, JobApprovalsSchema, JobEndSchema, SetupMadeSchema } from "./act-schema.ts";
import { draftJobApprovals } from "./approvals.ts";
import { computeJob } from "./compute.ts";
import {
  changedJob,
  endJob,
  keepJob,
  readyJob,
  recomputed,
  reopenJob,
  requireDaysInOrder,
  requireOpen,
  setupMade,
} from "./decide.ts";
import { finishedSetup } from "./finish.ts";
import { jobKind } from "./kind.ts";
import { jobs } from "./reads.ts";
import { neededFor } from "./ready.ts";
import { JobChangeSchema, type JobRecord, JobSchema, type NewJob, NewJobSchema } from "./schema.ts";

/** Two hundred parts with their cuts. */
export const BODY_LIMIT_BYTES = 1024 * 1024;

/** A job has a dozen bits. */
const MOST_KEPT = 1000;

const WRITE = { scope: "jobs:write", tag: "jobs", of: jobs, answer: JobSchema } as const;

export function jobWriteRoutes(app: App, doors: Doors, admit: Admit): void {
  draftRoutes(app, doors, admit);
  stateRoutes(app, doors);
  madeRoutes(app, doors, admit);
}

function draftRoutes(app: App, doors: Doors, admit: Admit): void {
  const { answer } = doors;

  createLongRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/jobs",
      operationId: "createJob",
      summary: "Compute a job from its list of parts, and keep it as a draft",
      body: NewJobSchema,
      bodyLimit: BODY_LIMIT_BYTES,
      admit,
    },
    async ({ body, request, at, turns }) => {
      const asked = await answer(asAsked(body, request));
      const work = await computeJob(asked, { answer, turns, at });
      const { record, changes } = keepJob(newId(jobKind.idPrefix), asked, work, at);
      return { changes, answer: record };
    },
  );

  actLongRoute(
    app,
    doors,
    {
      ...WRITE,
      method: "PATCH",
      path: "/v1/jobs/:jobId",
      operationId: "updateJob",
      summary: "Change a draft and compute it again",
      body: JobChangeSchema,
      bodyLimit: BODY_LIMIT_BYTES,
      admit,
    },
    async (current, { body, request, at, turns }) => {
      const next = changedJob(current, body);
      await answer(asAsked(next, request));
      const work = await computeJob(next, { answer, turns, at });
      const { record, changes } = recomputed(current, next, work, at);
      return { changes, answer: record };
    },
  );

  actLongRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/jobs/:jobId/compute",
      operationId: "computeJob",
      summary: "Compute a job again from how things are now; what was made stays made",
      admit,
    },
    async (current, { at, turns }) => {
      requireOpen(current);
      const work = await computeJob(current, { answer, turns, at });
      const { record, changes } = recomputed(current, current, work, at);
      return { changes, answer: record };
    },
  );
}

function stateRoutes(app: App, doors: Doors): void {
  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/jobs/:jobId/ready",
      operationId: "readyJob",
      summary: "Settle a draft: its bits are kept for its days",
    },
    function* (current, { at }) {
      const { bits, inTheWay } = yield* neededFor(current, at);
      const { record, changes } = readyJob(current, bits, inTheWay, at);
      // A bit that is lent or held meanwhile is looked at again.
      const expects = bits.map(({ id, version }) => ({ kind: bitKind, id, version }));
      return { changes, expects, answer: record };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/jobs/:jobId/reopen",
      operationId: "reopenJob",
      summary: "Make a job that is ready a draft again: its bits are free",
    },
    function* (current, { at }) {
      const { record, changes } = reopenJob(current, yield* keptFor(current), at);
      return { changes, answer: record };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/jobs/:jobId/end",
      operationId: "endJob",
      summary: "End a job as done or dropped: its bits are free",
      body: JobEndSchema,
    },
    function* (current, { body, at }) {
      const { record, changes } = endJob(current, body.as, yield* keptFor(current), at);
      return { changes, answer: record };
    },
  );
}

function madeRoutes(app: App, doors: Doors, admit: Admit): void {
  const { answer } = doors;

  actLongRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/jobs/:jobId/set-ups-made",
      operationId: "finishJobSetup",
      summary: "Log a set-up that was made; what came out changes the passes or the speed of what is left",
      body: SetupMadeSchema,
      admit,
    },
    async (current, { body, request, at, turns }) => {
      const finished = await answer(finishedSetup(current, body, request, at));
      const next: JobRecord = { ...current, state: "under-way", made: [...current.made, finished.made] };
      const bits = new Map([[finished.bit.record.id, finished.bit]]);
      const work = await computeJob(next, { answer, turns, at, bits });
      const { record, changes } = setupMade(current, finished.made, work, await answer(keptFor(current)), at);
      return { changes: [...finished.changes, ...changes], answer: record };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      scope: "approvals:write",
      path: "/v1/jobs/:jobId/approvals",
      operationId: "draftJobApprovals",
      summary: "Draft approved settings for a course from every set-up of a job",
      body: JobApprovalsSchema,
      answer: JobApprovalsMadeSchema,
    },
    (current, { body, request, at }) => draftJobApprovals(current, body, request, at),
  );
}

/** A job as its request means it: in the caller's name if it says no other, its days in order, and what it names there. */
function* asAsked<Asked extends NewJob>(body: Asked, request: FastifyRequest): Question<Asked> {
  requireDaysInOrder(body);
  yield* requireNamed([
    { pointer: "/personId", id: body.personId, of: people },
    { pointer: "/courseId", id: body.courseId, of: courses },
  ]);
  const personId = personAsked(request, body.personId) ?? callerOf(request).personId;
  return { ...body, ...(personId !== undefined && { personId }) };
}

function keptFor({ id }: JobRecord) {
  return reservations.page("", MOST_KEPT, { jobId: id, state: "kept" });
}
