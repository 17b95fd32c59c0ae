import type { FastifyRequest } from "fastify";
import { requireInstructor } from "../courses/access.ts";
import { courses } from "../courses/kind.ts";
import type { App } from "../http/app-type.ts";
import { type CreatedEach, createManyRoute, type RowsBefore } from "../http/create-many-route.ts";
import { requireOne } from "../http/named-records.ts";
import { listRecordsRoute, requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, createRoute } from "../http/write-routes.ts";
import { people } from "../people/kind.ts";
import { Problem } from "../problems/problem.ts";
import { creation, newRecord, nextVersion, replacement } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { Question } from "../store/query.ts";
import { enrolmentKind, enrolments } from "./kind.ts";
import {
  ENROLMENT_SCHEMAS,
  EnrolmentPageSchema,
  type EnrolmentRecord,
  EnrolmentSchema,
  type NewEnrolment,
  NewEnrolmentSchema,
  NewEnrolmentsAnswerSchema,
  NewEnrolmentsSchema,
} from "./schema.ts";

const WRITE = { scope: "courses:write", tag: "enrolments", answer: EnrolmentSchema } as const;

export function enrolmentRoutes(app: App, doors: Doors): void {
  for (const schema of ENROLMENT_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    of: enrolments,
    scope: "courses:read",
    tag: "enrolments",
    path: "/v1/enrolments",
    operationId: "listEnrolments",
    summary: "List who takes part in which course; a member sees their own",
    page: EnrolmentPageSchema,
    filters: { courseId: "In this course.", personId: "Of this person." },
  });

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/courses/:courseId/enrolments",
      operationId: "createEnrolment",
      summary: "Take somebody into a course; only a manager makes somebody its instructor",
      body: NewEnrolmentSchema,
      location: ({ courseId }) => `${enrolmentKind.path}?courseId=${courseId}`,
    },
    ({ params: { courseId }, body, request, at }) => enrolled(courseId, body, { request, at }, []),
  );

  createManyRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/courses/:courseId/enrolments/batch",
      operationId: "createManyEnrolments",
      summary: "Take many people into a course; only a manager makes somebody its instructor",
      body: NewEnrolmentsSchema,
      answer: NewEnrolmentsAnswerSchema,
    },
    (enrolment: NewEnrolment, { params: { courseId }, request, at }, before: RowsBefore<EnrolmentRecord>) =>
      enrolled(courseId, enrolment, { request, at }, before),
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      of: enrolments,
      path: "/v1/enrolments/:enrolmentId/end",
      operationId: "endEnrolment",
      summary: "End somebody's part in a course",
    },
    function* (current, { request, at }) {
      yield* requireRight(request, current.courseId, current.part);
      if (current.endedAt !== undefined) return { changes: [], answer: current };
      const record: EnrolmentRecord = { ...nextVersion(current, at), endedAt: at };
      return { changes: [replacement(enrolmentKind, current, record, "ended")], answer: record };
    },
  );
}

/** Somebody's part in a course from now on. They must not have one already, nor be taken in `before` in the same request. */
function* enrolled(
  courseId: string,
  { personId, part }: NewEnrolment,
  { request, at }: { readonly request: FastifyRequest; readonly at: string },
  before: RowsBefore<EnrolmentRecord>,
): Question<CreatedEach<EnrolmentRecord>> {
  requireFound(courses.kind, courseId, yield* courses.find(courseId));
  yield* requireRight(request, courseId, part);
  const person = yield* requireOne("/personId", personId, people);
  if (person.state === "left") throw new Problem("person-left", `${person.name} has left.`);
  const [kept] = yield* enrolments.page("", 1, { courseId, personId, endedAt: null });
  const already = kept ?? before.find((each) => each?.personId === personId);
  if (already !== undefined) throw new Problem("enrolled-already", `It is ${already.id}.`);
  const record = newRecord(newId(enrolmentKind.idPrefix), { courseId, personId, part }, at);
  return { changes: [creation(enrolmentKind, record)], answer: record };
}

/** An instructor takes students into their own course; who teaches is the manager's to say. */
function* requireRight(
  request: FastifyRequest,
  courseId: string,
  part: EnrolmentRecord["part"],
): Question<void> {
  if (part === "student") yield* requireInstructor(request, courseId);
  else if (request.caller?.role !== "manager") {
    throw new Problem("not-yours", "Only a manager says who teaches a course.");
  }
}
