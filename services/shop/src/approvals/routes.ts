import type { FastifyRequest } from "fastify";
import Type from "typebox";
import type { BitReads } from "../bits/reads.ts";
import { reasonBody } from "../bits/standing-schema.ts";
import type { CourseAccess } from "../courses/access.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { requireOne } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, decidedAnew, stampOf, type Write } from "../http/write.ts";
import type { RouterReads } from "../routers/reads.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { isForMember } from "./access.ts";
import { APPROVAL_STATES, type ApprovalRecord } from "./approval.ts";
import { draftApproval, issueApproval, reissueApproval, withdrawApproval, woodsOf } from "./decide.ts";
import { measuredUntil } from "./measured-until.ts";
import { outcomeOn } from "./outcome.ts";
import type { ApprovalReads } from "./reads.ts";
import {
  APPROVAL_SCHEMAS,
  ApprovalPageSchema,
  ApprovalSchema,
  NewApprovalSchema,
  ReissueSchema,
} from "./schema.ts";
import { shownApproval } from "./state.ts";

export type ApprovalParts = {
  readonly reads: ApprovalReads;
  readonly courses: RecordReads<"course">;
  readonly plans: RecordReads<"plan">;
  readonly bits: BitReads;
  readonly routers: RouterReads;
  readonly access: CourseAccess;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const ApprovalPath = Type.Object({ approvalId: Type.String({ description: "Id of a setting." }) });

export function approvalRoutes(app: App, parts: ApprovalParts): void {
  const { reads, courses, plans, routers, access, write, answerOnce, now } = parts;
  for (const schema of APPROVAL_SCHEMAS) app.addSchema(schema);
  const common = { scope: "approvals:read", tag: "approvals" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/approvals",
      operationId: "listApprovals",
      summary: "List approved settings; a member sees what is issued in their own courses",
      page: ApprovalPageSchema,
      filters: {
        courseId: idFilter("Of this course."),
        bitId: idFilter("For this bit."),
        state: Type.Optional(
          Type.Enum(
            APPROVAL_STATES.filter((state) => state !== "expired"),
            { type: "string", description: "Kept state; `issued` holds those that have expired too." },
          ),
        ),
      },
    },
    async (afterId, most, { courseId, bitId, state }, request) => {
      const at = now().toISOString();
      const own = await access.ownCourses(request);
      const found =
        own === undefined
          ? await reads.page(afterId, most, { courseId, bitId, state })
          : await reads.ofCourses(
              own.filter((id) => courseId === undefined || id === courseId),
              afterId,
              most,
            );
      const visibleToThem = found.filter((each) => isForMember(each, request));
      return Promise.all(
        visibleToThem.map(async (each) => shownApproval(each, at, await reads.lapseOf(each))),
      );
    },
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/approvals/:approvalId",
      operationId: "getApproval",
      summary: "Read a setting",
      record: ApprovalSchema,
      noun: "setting",
      parameter: "approvalId",
    },
    (id, request) => visible(id, request),
    async (record) => shownApproval(record, now().toISOString(), await reads.lapseOf(record)),
  );

  app.post(
    "/v1/approvals",
    {
      config: { scope: "approvals:write", operation: "create" },
      schema: {
        operationId: "createApproval",
        tags: ["approvals"],
        summary: "Draft a setting from a stored plan, computed anew under the course's policy",
        body: ref(NewApprovalSchema),
        response: { 201: ref(ApprovalSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { body } = request;
        const course = await requireOne("/courseId", "course", body.courseId, courses);
        const plan = await requireOne("/planId", "plan", body.planId, plans);
        const by = await access.requireInstructor(request, course.id);
        const stamp = stampOf(request, now());
        const ground = await reads.ground(stamp.at, plan.request, woodsOf(plan, body), course.id);
        const outcome = outcomeOn(ground);
        const until = await measuredUntil(ground, routers, stamp.at);
        const ids = { approvalId: newId("approval"), groundsId: newId("grounds") };
        const decided = draftApproval(ids, body, plan, course, outcome, until, by, stamp.at);
        return { stamp, ...decided, ...answerOf(decided.record) };
      }),
  );

  app.post(
    "/v1/approvals/:approvalId/issue",
    {
      config: { scope: "approvals:write", operation: "act" },
      schema: {
        operationId: "issueApproval",
        tags: ["approvals"],
        summary: "Issue a draft: from now on a class may rely on it, until something it rests on changes",
        params: ApprovalPath,
        response: { 200: ref(ApprovalSchema) },
      },
    },
    (request, reply) =>
      decidedAnew(async () => {
        const { current, course, by } = await instructors(request, request.params.approvalId);
        const stamp = stampOf(request, now());
        const outcome = outcomeOn(await groundOf(current, stamp.at));
        const { record, changes } = issueApproval(current, course, outcome, by, stamp.at);
        await write({ stamp, changes, expects: [expected(course)] }, changedMeanwhile);
        reply.header("ETag", etagOf(record.version));
        return shownApproval(record, stamp.at);
      }),
  );

  app.post(
    "/v1/approvals/:approvalId/reissue",
    {
      config: { scope: "approvals:write", operation: "create" },
      schema: {
        operationId: "reissueApproval",
        tags: ["approvals"],
        summary: "Issue a setting anew as it comes out now, after its difference was seen",
        params: ApprovalPath,
        body: ref(ReissueSchema),
        response: { 201: ref(ApprovalSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { current, course, by } = await instructors(request, request.params.approvalId);
        const grounds = requireFound("setting", current.id, await reads.groundsOf(current.id));
        const stamp = stampOf(request, now());
        const ground = await groundOf(current, stamp.at);
        const outcome = outcomeOn(ground);
        const until = await measuredUntil(ground, routers, stamp.at);
        const ids = { approvalId: newId("approval"), groundsId: newId("grounds") };
        const { resultDigest, validUntil } = request.body;
        const seen = { resultDigest, validUntil, readingsUntil: until };
        const decided = reissueApproval(ids, current, grounds, course, outcome, seen, by, stamp.at);
        return { stamp, ...decided, expects: [expected(course)], ...answerOf(decided.record) };
      }),
  );

  app.post(
    "/v1/approvals/:approvalId/withdraw",
    {
      config: { scope: "approvals:write", operation: "act" },
      schema: {
        operationId: "withdrawApproval",
        tags: ["approvals"],
        summary: "End a setting at once",
        params: ApprovalPath,
        body: reasonBody,
        response: { 200: ref(ApprovalSchema) },
      },
    },
    (request, reply) =>
      decidedAnew(async () => {
        const { current } = await instructors(request, request.params.approvalId);
        const stamp = stampOf(request, now());
        const { record, changes } = withdrawApproval(current, request.body.because, stamp.at);
        await write({ stamp, changes }, changedMeanwhile);
        reply.header("ETag", etagOf(record.version));
        return shownApproval(record, stamp.at, await reads.lapseOf(record));
      }),
  );

  /** A setting of a course the caller may see; a member sees what was issued to them. */
  async function visible(id: string, request: FastifyRequest): Promise<ApprovalRecord | undefined> {
    const record = await reads.find(id);
    if (record === undefined || !(await access.maySee(request, record.courseId))) return undefined;
    return isForMember(record, request) ? record : undefined;
  }

  async function instructors(request: FastifyRequest, id: string) {
    const current = requireFound("setting", id, await reads.find(id));
    const by = await access.requireInstructor(request, current.courseId);
    const course = requireFound("course", current.courseId, await courses.find(current.courseId));
    return { current, course, by };
  }

  async function groundOf({ id, woodIds, courseId }: ApprovalRecord, at: string) {
    const { request } = requireFound("setting", id, await reads.groundsOf(id));
    return reads.ground(at, request, woodIds, courseId);
  }

  function answerOf(record: ApprovalRecord) {
    const headers = { Location: `/v1/approvals/${record.id}`, ETag: etagOf(record.version) };
    return { headers, body: shownApproval(record, record.createdAt) };
  }
}

function expected({ id, version }: { readonly id: string; readonly version: number }) {
  return { type: "course", id, version } as const;
}
