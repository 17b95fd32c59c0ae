import type { FastifyRequest } from "fastify";
import Type from "typebox";
import type { ApprovalReads } from "../approvals/reads.ts";
import { shownApproval } from "../approvals/state.ts";
import type { App } from "../http/app-type.ts";
import { daysAfter } from "../http/moment.ts";
import { requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { callerOf } from "../keys/caller.ts";
import type { Scope } from "../keys/scopes.ts";
import { Problem } from "../problems/problem.ts";
import { missingFor } from "../qualifications/missing.ts";
import type { RecordReads } from "../store/record-reads.ts";
import type { CourseAccess } from "./access.ts";
import { EndingSchema, NeedsSchema, TodaySchema, UsageSchema, VIEW_SCHEMAS } from "./view-schema.ts";
import { todayOf, usageOf } from "./views.ts";

type Parts = {
  readonly reads: RecordReads<"course">;
  readonly enrolments: RecordReads<"enrolment">;
  readonly qualifications: RecordReads<"qualification">;
  readonly people: RecordReads<"person">;
  readonly approvals: ApprovalReads;
  readonly uses: RecordReads<"use">;
  readonly access: CourseAccess;
  readonly now: () => Date;
};

const USUAL_DAYS = 7;

/** A class is some dozens of people; more than this are told to be more. */
const MOST_STUDENTS = 500;
const MOST_OF_A_PERSON = 500;
const MOST_SETTINGS = 500;

const CoursePath = Type.Object({ courseId: Type.String({ description: "Id of a course." }) });
const StudentPath = Type.Object({
  courseId: Type.String({ description: "Id of a course." }),
  personId: Type.String({ description: "Id of a student." }),
});
const DaysQuery = Type.Object(
  {
    days: Type.Integer({ minimum: 1, maximum: 365, default: USUAL_DAYS, description: "How many days." }),
  },
  { additionalProperties: false },
);

/** What a class sees of itself: students their own day, instructors everybody's. */
export function courseViewRoutes(app: App, parts: Parts): void {
  const { reads, enrolments, qualifications, people, approvals, uses, access, now } = parts;
  for (const schema of VIEW_SCHEMAS) app.addSchema(schema);

  app.get(
    "/v1/courses/:courseId/students/:personId/today",
    {
      config: act("approvals:read"),
      schema: {
        operationId: "getStudentToday",
        tags: ["courses"],
        summary: "What a student may do today, and what they still need",
        params: StudentPath,
        response: { 200: ref(TodaySchema) },
      },
    },
    async (request) => {
      const { courseId, personId } = request.params;
      const caller = callerOf(request);
      if (caller.role === "member" && caller.personId !== personId) {
        throw new Problem("not-yours", "A student sees their own day only.");
      }
      const course = await visibleCourse(request, courseId);
      const [part] = await enrolments.page("", 1, { courseId, personId, endedAt: null });
      requireFound("student in this course", personId, part);
      const at = now().toISOString();
      const held = await qualifications.newest(MOST_OF_A_PERSON, { personId });
      const issued = await approvals.page("", MOST_SETTINGS, { courseId, state: "issued" });
      const { missing, settings } = todayOf(course, personId, held, issued, at);
      return { courseId, personId, missing, settings: settings.map((each) => shownApproval(each, at)) };
    },
  );

  app.get(
    "/v1/courses/:courseId/needs",
    {
      config: act("courses:write"),
      schema: {
        operationId: "listCourseNeeds",
        tags: ["courses"],
        summary: "Who in a course still needs what",
        params: CoursePath,
        response: { 200: ref(NeedsSchema) },
      },
    },
    async (request) => {
      const { courseId } = request.params;
      const course = await visibleCourse(request, courseId);
      await access.requireInstructor(request, courseId);
      const at = now().toISOString();
      const students = await studentsOf(courseId);
      const data = await Promise.all(
        students.ids.map(async (personId) => {
          const held = await qualifications.newest(MOST_OF_A_PERSON, { personId });
          const person = await people.find(personId);
          return { personId, name: person?.name ?? "", missing: missingFor(course, undefined, held, at) };
        }),
      );
      return { data: data.filter(({ missing }) => missing.length > 0), isComplete: students.isComplete };
    },
  );

  app.get(
    "/v1/courses/:courseId/ending",
    {
      config: act("courses:write"),
      schema: {
        operationId: "listCourseEnding",
        tags: ["courses"],
        summary: "What runs out in the coming days",
        params: CoursePath,
        querystring: DaysQuery,
        response: { 200: ref(EndingSchema) },
      },
    },
    async (request) => {
      const { courseId } = request.params;
      await visibleCourse(request, courseId);
      await access.requireInstructor(request, courseId);
      const at = now().toISOString();
      const until = daysAfter(at, request.query.days);
      const settings = await approvals.endingBy(courseId, until, MOST_SETTINGS);
      const { ids } = await studentsOf(courseId);
      const held = await Promise.all(
        ids.map((personId) => qualifications.newest(MOST_OF_A_PERSON, { personId })),
      );
      return {
        settings: settings.filter(({ validUntil }) => validUntil > at).map((each) => shownApproval(each, at)),
        qualifications: held
          .flat()
          .filter(
            ({ expiresAt = "", withdrawn }) =>
              withdrawn === undefined && expiresAt > at && expiresAt <= until,
          ),
      };
    },
  );

  app.get(
    "/v1/courses/:courseId/usage",
    {
      config: act("courses:write"),
      schema: {
        operationId: "getCourseUsage",
        tags: ["courses"],
        summary: "What the class used in the last days",
        params: CoursePath,
        querystring: DaysQuery,
        response: { 200: ref(UsageSchema) },
      },
    },
    async (request) => {
      const { courseId } = request.params;
      await visibleCourse(request, courseId);
      await access.requireInstructor(request, courseId);
      const since = daysAfter(now().toISOString(), -request.query.days);
      const { ids } = await studentsOf(courseId);
      const done = await Promise.all(ids.map((personId) => uses.newest(MOST_OF_A_PERSON, { personId })));
      return { data: usageOf(done.flat().filter(({ doneAt }) => doneAt >= since)) };
    },
  );

  async function visibleCourse(request: FastifyRequest, courseId: string) {
    const isVisible = await access.maySee(request, courseId);
    return requireFound("course", courseId, isVisible ? await reads.find(courseId) : undefined);
  }

  async function studentsOf(courseId: string) {
    const parts = await enrolments.page("", MOST_STUDENTS + 1, { courseId, endedAt: null });
    const students = parts.filter(({ part }) => part === "student").map(({ personId }) => personId);
    return { ids: students.slice(0, MOST_STUDENTS), isComplete: parts.length <= MOST_STUDENTS };
  }
}

function act(scope: Scope) {
  return { scope, operation: "act" } as const;
}
