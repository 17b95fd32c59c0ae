import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import type { CourseAccess } from "./access.ts";
import { changeCourse, createCourse } from "./decide.ts";
import {
  COURSE_SCHEMAS,
  CourseChangeSchema,
  CoursePageSchema,
  CourseSchema,
  NewCourseSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"course">;
  readonly access: CourseAccess;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const CoursePath = Type.Object({ courseId: Type.String({ description: "Id of a course." }) });

export function courseRoutes(app: App, { reads, access, write, answerOnce, now }: Parts): void {
  for (const schema of COURSE_SCHEMAS) app.addSchema(schema);
  const common = { scope: "courses:read", tag: "courses" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/courses",
      operationId: "listCourses",
      summary: "List courses; a member sees those they take part in",
      page: CoursePageSchema,
    },
    async (afterId, most, _filters, request) => {
      const own = await access.ownCourses(request);
      if (own === undefined) return reads.page(afterId, most);
      const found = await Promise.all(
        [...own]
          .filter((id) => id > afterId)
          .sort()
          .slice(0, most)
          .map(reads.find),
      );
      return found.flatMap((course) => course ?? []);
    },
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/courses/:courseId",
      operationId: "getCourse",
      summary: "Read a course",
      record: CourseSchema,
      noun: "course",
      parameter: "courseId",
    },
    async (id, request) => ((await access.maySee(request, id)) ? reads.find(id) : undefined),
  );

  app.post(
    "/v1/courses",
    {
      config: { scope: "courses:write", operation: "create" },
      schema: {
        operationId: "createCourse",
        tags: ["courses"],
        summary: "Set up a course",
        body: ref(NewCourseSchema),
        response: { 201: ref(CourseSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, () => {
        const stamp = stampOf(request, now());
        const { record, change } = createCourse(newId("course"), request.body, stamp.at);
        const headers = { Location: `/v1/courses/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  app.patch(
    "/v1/courses/:courseId",
    {
      config: { scope: "courses:write", operation: "change" },
      schema: {
        operationId: "updateCourse",
        tags: ["courses"],
        summary: "Change a course; settings that come out otherwise under its policy lapse",
        params: CoursePath,
        body: ref(CourseChangeSchema),
        response: { 200: ref(CourseSchema) },
      },
    },
    async (request, reply) => {
      const { courseId } = request.params;
      const current = requireFound("course", courseId, await reads.find(courseId));
      await access.requireInstructor(request, courseId);
      requireMatch(request, current.version);
      const stamp = stampOf(request, now());
      const { record, change } = changeCourse(current, request.body, stamp.at);
      await write({ stamp, changes: [change] });
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );
}
