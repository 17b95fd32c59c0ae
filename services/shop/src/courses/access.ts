import type { FastifyRequest } from "fastify";
import type { EnrolmentRecord } from "../enrolments/schema.ts";
import { callerOf } from "../keys/caller.ts";
import { Problem } from "../problems/problem.ts";
import type { RecordReads } from "../store/record-reads.ts";

/** A course has some hundred people, a person some dozen courses. */
const MOST_ENROLMENTS = 2000;

/** Who may see and do what in which course, beyond what their role allows everywhere. */
export type CourseAccess = {
  /** Courses a member takes part in; undefined for staff, who see all. */
  readonly ownCourses: (request: FastifyRequest) => Promise<readonly string[] | undefined>;
  /** Whether the caller may see a course. */
  readonly maySee: (request: FastifyRequest, courseId: string) => Promise<boolean>;
  /** Refuses who does not teach a course. A manager may in every course. Returns who acts. */
  readonly requireInstructor: (request: FastifyRequest, courseId: string) => Promise<string>;
};

export function courseAccess(enrolments: RecordReads<"enrolment">): CourseAccess {
  const partsOf = (personId: string): Promise<EnrolmentRecord[]> =>
    enrolments.page("", MOST_ENROLMENTS, { personId, endedAt: null });

  async function ownCourses(request: FastifyRequest): Promise<readonly string[] | undefined> {
    const { role, personId } = callerOf(request);
    if (role !== "member") return undefined;
    return personId === undefined ? [] : (await partsOf(personId)).map(({ courseId }) => courseId);
  }

  return {
    ownCourses,
    maySee: async (request, courseId) => (await ownCourses(request))?.includes(courseId) ?? true,
    requireInstructor: async (request, courseId) => {
      const { role, personId, keyId } = callerOf(request);
      if (role === "manager") return personId ?? keyId;
      const parts = personId === undefined ? [] : await partsOf(personId);
      const teaches = parts.some((each) => each.courseId === courseId && each.part === "instructor");
      if (personId !== undefined && teaches) return personId;
      throw new Problem("not-yours", "Only an instructor of this course, or a manager, may do this.");
    },
  };
}
