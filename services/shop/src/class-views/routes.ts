import type { FastifyRequest } from "fastify";
import Type from "typebox";
import { visibleTo } from "../access/caller.ts";
import { approvals } from "../approvals/reads.ts";
import { shownApproval } from "../approvals/state.ts";
import { requireInstructor } from "../courses/access.ts";
import { courses } from "../courses/kind.ts";
import type { CourseRecord } from "../courses/schema.ts";
import { enrolments } from "../enrolments/kind.ts";
import type { App } from "../http/app-type.ts";
import { askRoute } from "../http/ask-routes.ts";
import { daysAfter } from "../http/moment.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { people } from "../people/kind.ts";
import { qualifications } from "../qualifications/kind.ts";
import { missingFor } from "../qualifications/missing.ts";
import { qualificationsCounting } from "../qualifications/reads.ts";
import type { Question } from "../store/query.ts";
import { uses } from "../uses/kind.ts";
import { EndingSchema, NeedsSchema, TodaySchema, UsageSchema, VIEW_SCHEMAS } from "./schema.ts";
import { todayOf, usageOf } from "./views.ts";

const USUAL_DAYS = 7;

/** A class is some dozens of people; beyond this an answer says that it is not complete. */
const MOST_STUDENTS = 500;
const MOST_OF_A_PERSON = 500;
const MOST_SETTINGS = 500;

const DaysQuery = Type.Object(
  {
    days: Type.Integer({ minimum: 1, maximum: 365, default: USUAL_DAYS, description: "How many days." }),
  },
  { additionalProperties: false },
);

const TEACHERS = { scope: "courses:write", tag: "courses" } as const;

export function classViewRoutes(app: App, doors: Doors): void {
  for (const schema of VIEW_SCHEMAS) app.addSchema(schema);

  askRoute(
    app,
    doors,
    {
      scope: "approvals:read",
      tag: "courses",
      path: "/v1/courses/:courseId/students/:personId/today",
      parameters: { personId: "a student" },
      operationId: "getStudentToday",
      summary: "What a student may do today, and what they still need",
      answer: TodaySchema,
    },
    function* ({ params: { courseId, personId }, request, at }) {
      const course = yield* visibleCourse(request, courseId);
      const [part] = yield* visibleTo(request, enrolments).page("", 1, {
        courseId,
        personId,
        endedAt: null,
      });
      requireFound({ noun: "student in this course" }, personId, part);
      const held = yield* qualificationsCounting(personId, at);
      const holding = yield* approvals.holdingFor(personId, courseId, at, MOST_SETTINGS);
      const { missing, settings } = todayOf(course, held, holding, at);
      return { courseId, personId, missing, settings: settings.map((each) => shownApproval(each, at)) };
    },
  );

  askRoute(
    app,
    doors,
    {
      ...TEACHERS,
      path: "/v1/courses/:courseId/needs",
      operationId: "listCourseNeeds",
      summary: "Who in a course still needs what",
      answer: NeedsSchema,
    },
    function* ({ params: { courseId }, request, at }) {
      const course = yield* taughtCourse(request, courseId);
      const students = yield* studentsOf(courseId);
      const data = [];
      for (const personId of students.ids) {
        const held = yield* qualificationsCounting(personId, at);
        const missing = missingFor(course, undefined, held, at);
        if (missing.length === 0) continue;
        data.push({ personId, name: (yield* people.find(personId))?.name ?? "", missing });
      }
      return { data, isComplete: students.isComplete };
    },
  );

  askRoute(
    app,
    doors,
    {
      ...TEACHERS,
      path: "/v1/courses/:courseId/ending",
      operationId: "listCourseEnding",
      summary: "What runs out in the coming days",
      query: DaysQuery,
      answer: EndingSchema,
    },
    function* ({ params: { courseId }, query: { days }, request, at }) {
      yield* taughtCourse(request, courseId);
      const until = daysAfter(at, days);
      const settings = yield* approvals.endingBetween(courseId, at, until, MOST_SETTINGS);
      const ending = [];
      for (const personId of (yield* studentsOf(courseId)).ids) {
        const held = yield* qualifications.newest(MOST_OF_A_PERSON, { personId });
        ending.push(
          ...held.filter(
            ({ expiresAt = "", withdrawn }) =>
              withdrawn === undefined && expiresAt > at && expiresAt <= until,
          ),
        );
      }
      return {
        settings: settings.map((each) => shownApproval(each, at)),
        qualifications: ending,
      };
    },
  );

  askRoute(
    app,
    doors,
    {
      ...TEACHERS,
      path: "/v1/courses/:courseId/usage",
      operationId: "getCourseUsage",
      summary: "What the class used in the last days",
      query: DaysQuery,
      answer: UsageSchema,
    },
    function* ({ params: { courseId }, query: { days }, request, at }) {
      yield* taughtCourse(request, courseId);
      const since = daysAfter(at, -days);
      const done = [];
      for (const personId of (yield* studentsOf(courseId)).ids) {
        const used = yield* uses.newest(MOST_OF_A_PERSON, { personId });
        done.push(...used.filter(({ doneAt }) => doneAt >= since));
      }
      return { data: usageOf(done) };
    },
  );
}

function* visibleCourse(request: FastifyRequest, courseId: string): Question<CourseRecord> {
  return requireFound(courses.kind, courseId, yield* visibleTo(request, courses).find(courseId));
}

function* taughtCourse(request: FastifyRequest, courseId: string): Question<CourseRecord> {
  const course = yield* visibleCourse(request, courseId);
  yield* requireInstructor(request, courseId);
  return course;
}

function* studentsOf(courseId: string) {
  const parts = yield* enrolments.page("", MOST_STUDENTS + 1, { courseId, endedAt: null });
  const students = parts.filter(({ part }) => part === "student").map(({ personId }) => personId);
  return { ids: students.slice(0, MOST_STUDENTS), isComplete: parts.length <= MOST_STUDENTS };
}
