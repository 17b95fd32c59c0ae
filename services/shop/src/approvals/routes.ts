import type { FastifyRequest } from "fastify";
import { requirePerson, visibleTo } from "../access/caller.ts";
import { requireInstructor } from "../courses/access.ts";
import { courses } from "../courses/kind.ts";
import type { CourseRecord } from "../courses/schema.ts";
import type { App } from "../http/app-type.ts";
import { requireOne } from "../http/named-records.ts";
import { listShownRoute, readShownRoute, requireFound } from "../http/read-routes.ts";
import { ReasonSchema } from "../http/reason.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, createRoute } from "../http/write-routes.ts";
import { people } from "../people/kind.ts";
import { plans } from "../plans/kind.ts";
import type { Question } from "../store/query.ts";
import { issueApproval, withdrawApproval } from "./decide.ts";
import { draftFrom, newApprovalIds, requireDrafter } from "./draft.ts";
import { groundsAt } from "./grounds.ts";
import { approvalKind } from "./kind.ts";
import { measuredUntil } from "./measured-until.ts";
import { approvals } from "./reads.ts";
import type { ApprovalRecord } from "./record-schema.ts";
import { reissueApproval } from "./reissue.ts";
import { type Grounds, resultOn } from "./result.ts";
import {
  APPROVAL_SCHEMAS,
  ApprovalPageSchema,
  ApprovalSchema,
  NewApprovalSchema,
  ReissueSchema,
} from "./schema.ts";
import { shownApproval } from "./state.ts";

const READ = { scope: "approvals:read", tag: "approvals", of: approvals } as const;
const WRITE = {
  scope: "approvals:write",
  tag: "approvals",
  of: approvals,
  answer: ApprovalSchema,
} as const;

export function approvalRoutes(app: App, doors: Doors): void {
  for (const schema of APPROVAL_SCHEMAS) app.addSchema(schema);

  listShownRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/approvals",
      operationId: "listApprovals",
      summary: "List approved settings; a member sees what is issued in their own courses",
      page: ApprovalPageSchema,
      filters: {
        courseId: "Of this course.",
        bitId: "For this bit.",
        state: "Kept state; `issued` holds those that have expired too.",
      },
    },
    function* (approval, { at }) {
      return shownApproval(approval, at, yield* approvals.lapseOf(approval));
    },
  );

  readShownRoute(
    app,
    doors,
    {
      ...READ,
      path: "/v1/approvals/:approvalId",
      operationId: "getApproval",
      summary: "Read an approval",
      answer: ApprovalSchema,
    },
    function* (id, { request, at }) {
      const record = yield* visibleTo(request, approvals).find(id);
      return record && shownApproval(record, at, yield* approvals.lapseOf(record));
    },
  );

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/approvals",
      operationId: "createApproval",
      summary: "Draft a setting from a stored plan, computed again under the course's policy",
      body: NewApprovalSchema,
    },
    function* ({ body, request, at }) {
      const course = yield* requireOne("/courseId", body.courseId, courses);
      const plan = yield* requireOne("/planId", body.planId, plans);
      const by = yield* requireDrafter(request, course);
      const { record, changes } = yield* draftFrom(plan, body, course, by, at);
      return { changes, answer: shownApproval(record, at) };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/approvals/:approvalId/issue",
      operationId: "issueApproval",
      summary: "Issue a draft: from now on a class may rely on it, until something it rests on changes",
      description:
        "Takes the key of a person. If the course asks for two persons, or did when it was drafted, another person than the one who drafted it issues it.",
    },
    function* (current, { request, at }) {
      const by = requireIssuer(request);
      const course = yield* taughtCourse(request, current);
      const drafterId = (yield* people.find(current.draftedBy))?.id;
      const { replacesId } = current;
      const replaces = replacesId === undefined ? undefined : yield* approvals.find(replacesId);
      const result = resultOn(yield* groundsNow(current, at));
      const facts = { course, drafterId, replaces, result };
      const { record, changes } = issueApproval(current, facts, by, at);
      return { changes, expects: [expected(course)], answer: shownApproval(record, at) };
    },
  );

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/approvals/:approvalId/reissue",
      operationId: "reissueApproval",
      summary: "Issue a setting again as computed now, after its difference was seen",
      description:
        "Takes the key of a person. If two persons are needed, the answer is a draft, which another person issues; until then the old one stays what it is.",
      body: ReissueSchema,
      location: ({ id }) => `${approvalKind.path}/${id}`,
    },
    function* ({ params: { approvalId }, body: { resultDigest, validUntil }, request, at }) {
      const current = requireFound(approvalKind, approvalId, yield* approvals.find(approvalId));
      const by = requireIssuer(request);
      const course = yield* taughtCourse(request, current);
      const kept = requireFound(approvalKind, current.id, yield* approvals.groundsOf(current.id));
      const grounds = yield* groundsNow(current, at);
      const readingsUntil = yield* measuredUntil(grounds, at);
      const seen = { resultDigest, validUntil, readingsUntil };
      const result = resultOn(grounds);
      const decided = reissueApproval(newApprovalIds(), current, kept, course, result, seen, by, at);
      const { record, changes } = decided;
      return { changes, expects: [expected(course)], answer: shownApproval(record, at) };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/approvals/:approvalId/withdraw",
      operationId: "withdrawApproval",
      summary: "End a setting at once",
      body: ReasonSchema,
    },
    function* (current, { body: { reason }, request, at }) {
      yield* taughtCourse(request, current);
      const { record, changes } = withdrawApproval(current, reason, at);
      return { changes, answer: shownApproval(record, at, yield* approvals.lapseOf(record)) };
    },
  );
}

function requireIssuer(request: FastifyRequest): string {
  return requirePerson(request, "A person issues a setting, not a program. Use the key of an instructor.");
}

function* taughtCourse(request: FastifyRequest, { courseId }: ApprovalRecord): Question<CourseRecord> {
  yield* requireInstructor(request, courseId);
  return requireFound(courses.kind, courseId, yield* courses.find(courseId));
}

function* groundsNow({ id, woodIds, courseId }: ApprovalRecord, at: string): Question<Grounds> {
  const request = requireFound(approvalKind, id, yield* approvals.requestOf(id));
  return yield* groundsAt(at)(request, woodIds, courseId);
}

function expected({ id, version }: { readonly id: string; readonly version: number }) {
  return { kind: courses.kind, id, version };
}
