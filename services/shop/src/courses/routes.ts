import type { App } from "../http/app-type.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { changeRoute, createRoute } from "../http/write-routes.ts";
import { newId } from "../store/id.ts";
import { requireInstructor, requireManager } from "./access.ts";
import { changeCourse, createCourse } from "./decide.ts";
import { courseKind, courses } from "./kind.ts";
import {
  COURSE_SCHEMAS,
  CourseChangeSchema,
  CoursePageSchema,
  CourseSchema,
  NewCourseSchema,
} from "./schema.ts";

const READ = { scope: "courses:read", tag: "courses", of: courses } as const;
const WRITE = { scope: "courses:write", tag: "courses", of: courses, answer: CourseSchema } as const;

export function courseRoutes(app: App, doors: Doors): void {
  for (const schema of COURSE_SCHEMAS) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/courses",
    operationId: "listCourses",
    summary: "List courses; a member sees those they take part in",
    page: CoursePageSchema,
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/courses/:courseId",
    operationId: "getCourse",
    summary: "Read a course",
  });

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/courses",
      operationId: "createCourse",
      summary: "Set up a course",
      body: NewCourseSchema,
    },
    ({ body, at }) => {
      const { record, changes } = createCourse(newId(courseKind.idPrefix), body, at);
      return { changes, answer: record };
    },
  );

  changeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/courses/:courseId",
      operationId: "updateCourse",
      summary: "Change a course; settings whose plan changes under its policy lapse",
      body: CourseChangeSchema,
      mayChange: function* (current, { request, body }) {
        yield* requireInstructor(request, current.id);
        if (current.isTwoPerson && body.isTwoPerson === false) requireManager(request);
      },
    },
    (current, { body, at }) => {
      const { record, changes } = changeCourse(current, body, at);
      return { changes, answer: record };
    },
  );
}
