import type { FastifyRequest } from "fastify";
import { callerOf, requirePerson } from "../access/caller.ts";
import { requireInstructor } from "../courses/access.ts";
import { courses } from "../courses/kind.ts";
import type { App } from "../http/app-type.ts";
import { type CreatedEach, createManyRoute } from "../http/create-many-route.ts";
import { happenedAt } from "../http/moment.ts";
import { requireOne } from "../http/named-records.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import { ReasonSchema } from "../http/reason.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, createRoute } from "../http/write-routes.ts";
import { people } from "../people/kind.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { creation, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import { qualificationKind, qualifications } from "./kind.ts";
import {
  type NewQualification,
  NewQualificationSchema,
  NewQualificationsAnswerSchema,
  NewQualificationsSchema,
  QUALIFICATION_SCHEMAS,
  QualificationPageSchema,
  type QualificationRecord,
  QualificationSchema,
} from "./schema.ts";

const READ = { scope: "qualifications:read", tag: "qualifications", of: qualifications } as const;
const WRITE = {
  scope: "qualifications:write",
  tag: "qualifications",
  of: qualifications,
  answer: QualificationSchema,
} as const;

export function qualificationRoutes(app: App, doors: Doors): void {
  for (const schema of QUALIFICATION_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/qualifications",
    operationId: "listQualifications",
    summary: "List what people are qualified for; a member sees their own",
    page: QualificationPageSchema,
    filters: { personId: "Of this person." },
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/qualifications/:qualificationId",
    operationId: "getQualification",
    summary: "Read a qualification",
  });

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/qualifications",
      operationId: "createQualification",
      summary: "Sign what somebody was tested on, showed or was allowed",
      description:
        "One of a course counts in that course only; its instructors and managers sign and withdraw it. One of the shop, without a course, counts in every course; any instructor signs it, and whoever signed it or a manager withdraws it. Whoever is in charge sees all, others their own.",
      body: NewQualificationSchema,
    },
    ({ body, request, at }) => signed(body, { request, at }),
  );

  createManyRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/qualifications/batch",
      operationId: "createManyQualifications",
      summary: "Sign what many people were tested on, showed or were allowed",
      body: NewQualificationsSchema,
      answer: NewQualificationsAnswerSchema,
    },
    (qualification: NewQualification, { request, at }) => signed(qualification, { request, at }),
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/qualifications/:qualificationId/withdraw",
      operationId: "withdrawQualification",
      summary: "Say that a qualification no longer counts",
      body: ReasonSchema,
    },
    function* (current, { body: { reason }, request, at }) {
      yield* requireMayWithdraw(request, current);
      const record: QualificationRecord = { ...nextVersion(current, at), withdrawn: { at, reason } };
      return { changes: [replacement(qualificationKind, current, record, "withdrawn")], answer: record };
    },
  );
}

/** A qualification as the person whose key enters it signs it. */
function* signed(
  qualification: NewQualification,
  { request, at }: { readonly request: FastifyRequest; readonly at: string },
): Question<CreatedEach<QualificationRecord>> {
  requireWhole(qualification);
  const { personId, courseId, givenAt, expiresAt, ...rest } = qualification;
  const signedBy = requirePerson(request, "A person signs a qualification, not a program.");
  if (signedBy === personId) throw new Problem("not-yours", "Nobody signs for themselves.");
  if (courseId !== undefined) {
    yield* requireOne("/courseId", courseId, courses);
    yield* requireInstructor(request, courseId);
  }
  yield* requireOne("/personId", personId, people);
  const fields = {
    personId,
    ...(courseId !== undefined && { courseId }),
    ...rest,
    givenAt: happenedAt(givenAt, at, "/givenAt"),
    ...(expiresAt !== undefined && { expiresAt: new Date(expiresAt).toISOString() }),
    signedBy,
  };
  const record: QualificationRecord = newRecord(newId(qualificationKind.idPrefix), fields, at);
  return { changes: [creation(qualificationKind, record)], answer: record };
}

/** One of a course is its instructors' to withdraw, one of the shop whoever signed it; a manager may withdraw any. */
function* requireMayWithdraw(
  request: FastifyRequest,
  { courseId, signedBy }: QualificationRecord,
): Question<void> {
  if (courseId !== undefined) {
    yield* requireInstructor(request, courseId);
    return;
  }
  const { role, personId } = callerOf(request);
  if (role === "manager" || personId === signedBy) return;
  throw new Problem("not-yours", "Whoever signed it, or a manager, withdraws it.");
}

/** A safety test has a score, and nothing else has. */
function requireWhole({ kind, scorePercent }: NewQualification): void {
  if ((kind === "safety-test") === (scorePercent !== undefined)) return;
  const isTest = kind === "safety-test";
  throw notValid([
    {
      in: "body",
      pointer: "/scorePercent",
      message: isTest ? "A safety test has a score." : "Only a safety test has a score.",
      accepted: isTest ? "a number from 0 to 100" : "nothing: leave it out",
    },
  ]);
}
