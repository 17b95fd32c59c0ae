// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { CallOptions, Caller, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { CreateManyEnrolmentsData, CreatedEnrolments, Enrolment, ListEnrolmentsData, NewEnrolment, NewEnrolments } from "./types.gen.ts";

/** Who teaches and who learns in a course. */
export interface EnrolmentsResource {
  /**
   * List who takes part in which course; a member sees their own
   *
   * `GET /v1/enrolments`
   */
  list(query?: Loose<NonNullable<ListEnrolmentsData["query"]>>, options?: CallOptions): Pages<Enrolment>;

  /**
   * Take somebody into a course; only a manager makes somebody its instructor
   *
   * `POST /v1/courses/{courseId}/enrolments`
   */
  create(courseId: string, body: NewEnrolment, options?: WriteOptions): Answer<Enrolment>;

  /**
   * Take many people into a course; only a manager makes somebody its instructor
   *
   * `POST /v1/courses/{courseId}/enrolments/batch`
   */
  createMany(courseId: string, body: NewEnrolments, options?: WriteOptions & { readonly query?: Loose<NonNullable<CreateManyEnrolmentsData["query"]>> | undefined }): Answer<CreatedEnrolments>;

  /**
   * End somebody's part in a course
   *
   * `POST /v1/enrolments/{enrolmentId}/end`
   */
  end(enrolmentId: string, options?: WriteOptions): Answer<Enrolment>;
}

export function enrolmentsOf(caller: Caller): EnrolmentsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/enrolments", query }, options),
    create: (courseId, body, options) =>
      caller.send({ method: "POST", path: "/v1/courses/{}/enrolments", ids: [courseId], body }, options),
    createMany: (courseId, body, options) =>
      caller.send({ method: "POST", path: "/v1/courses/{}/enrolments/batch", ids: [courseId], body }, options),
    end: (enrolmentId, options) =>
      caller.send({ method: "POST", path: "/v1/enrolments/{}/end", ids: [enrolmentId] }, options),
  };
}
