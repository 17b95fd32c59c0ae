import Type from "typebox";
import type { CourseAccess } from "../courses/access.ts";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { requireOne } from "../http/named-records.ts";
import { idFilter, listRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, decidedAnew, stampOf, type Write } from "../http/write.ts";
import { ownPersonOnly } from "../keys/caller.ts";
import { Problem } from "../problems/problem.ts";
import { creation, nextVersion, replacement } from "../store/changes.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import {
  ENROLMENT_SCHEMAS,
  EnrolmentPageSchema,
  type EnrolmentRecord,
  EnrolmentSchema,
  NewEnrolmentSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"enrolment">;
  readonly courses: RecordReads<"course">;
  readonly people: RecordReads<"person">;
  readonly access: CourseAccess;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const CoursePath = Type.Object({ courseId: Type.String({ description: "Id of a course." }) });
const EnrolmentPath = Type.Object({ enrolmentId: Type.String({ description: "Id of an enrolment." }) });

export function enrolmentRoutes(app: App, parts: Parts): void {
  const { reads, courses, people, access, write, answerOnce, now } = parts;
  for (const schema of ENROLMENT_SCHEMAS) app.addSchema(schema);

  listRoute(
    app,
    {
      scope: "courses:read",
      tag: "enrolments",
      path: "/v1/enrolments",
      operationId: "listEnrolments",
      summary: "List who takes part in which course; a member sees their own",
      page: EnrolmentPageSchema,
      filters: {
        courseId: idFilter("In this course."),
        personId: idFilter("Of this person."),
      },
    },
    async (afterId, most, { courseId, personId }, request) => {
      const own = ownPersonOnly(request);
      return reads.page(afterId, most, { courseId, personId: own ?? personId });
    },
  );

  app.post(
    "/v1/courses/:courseId/enrolments",
    {
      config: { scope: "courses:write", operation: "create" },
      schema: {
        operationId: "createEnrolment",
        tags: ["enrolments"],
        summary: "Take somebody into a course; only a manager makes somebody its instructor",
        params: CoursePath,
        body: ref(NewEnrolmentSchema),
        response: { 201: ref(EnrolmentSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const { courseId } = request.params;
        const course = requireFound("course", courseId, await courses.find(courseId));
        await requireRight(request, courseId, request.body.part);
        const person = await requireOne("/personId", "person", request.body.personId, people);
        if (person.state === "left") throw new Problem("person-left", `${person.name} has left.`);
        const [already] = await reads.page("", 1, { courseId, personId: person.id, endedAt: null });
        if (already !== undefined) throw new Problem("enrolled-already", `It is ${already.id}.`);
        const stamp = stampOf(request, now());
        const record: EnrolmentRecord = {
          id: newId("enrolment"),
          courseId: course.id,
          personId: person.id,
          part: request.body.part,
          createdAt: stamp.at,
          updatedAt: stamp.at,
          version: 1,
        };
        const headers = { Location: `/v1/enrolments?courseId=${courseId}`, ETag: etagOf(record.version) };
        return { stamp, changes: [creation("enrolment", record)], headers, body: record };
      }),
  );

  app.post(
    "/v1/enrolments/:enrolmentId/end",
    {
      config: { scope: "courses:write", operation: "act" },
      schema: {
        operationId: "endEnrolment",
        tags: ["enrolments"],
        summary: "Let somebody leave a course",
        params: EnrolmentPath,
        response: { 200: ref(EnrolmentSchema) },
      },
    },
    (request, reply) =>
      decidedAnew(async () => {
        const { enrolmentId } = request.params;
        const current = requireFound("enrolment", enrolmentId, await reads.find(enrolmentId));
        await requireRight(request, current.courseId, current.part);
        const stamp = stampOf(request, now());
        const record: EnrolmentRecord =
          current.endedAt === undefined ? { ...nextVersion(current, stamp.at), endedAt: stamp.at } : current;
        if (record !== current) {
          await write(
            { stamp, changes: [replacement("enrolment", current, record, "ended")] },
            changedMeanwhile,
          );
        }
        reply.header("ETag", etagOf(record.version));
        return record;
      }),
  );

  /** An instructor takes students into their own course; who teaches is the manager's to say. */
  async function requireRight(
    request: Parameters<CourseAccess["requireInstructor"]>[0],
    courseId: string,
    part: EnrolmentRecord["part"],
  ): Promise<void> {
    if (part === "student") await access.requireInstructor(request, courseId);
    else if (request.caller?.role !== "manager") {
      throw new Problem("not-yours", "Only a manager says who teaches a course.");
    }
  }
}
