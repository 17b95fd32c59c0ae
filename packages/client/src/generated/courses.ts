// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type Loose, type RecordVersion, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { Course, CourseChange, Ending, GetCourseUsageData, ListCourseEndingData, ListCoursesData, Needs, NewCourse, Today, Usage } from "./types.gen.ts";

/** Courses, and what a class sees of itself. */
export interface CoursesResource {
  /**
   * List courses; a member sees those they take part in
   *
   * `GET /v1/courses`
   */
  list(query?: Loose<NonNullable<ListCoursesData["query"]>>, options?: CallOptions): Pages<Course>;

  /**
   * Set up a course
   *
   * `POST /v1/courses`
   */
  create(body: NewCourse, options?: WriteOptions): Answer<Course>;

  /**
   * Read a course
   *
   * `GET /v1/courses/{courseId}`
   */
  get(courseId: string, options: ConditionalOptions): Answer<Course | NotModified>;
  /**
   * Read a course
   *
   * `GET /v1/courses/{courseId}`
   */
  get(courseId: string, options?: CallOptions): Answer<Course>;

  /**
   * Change a course; settings whose plan changes under its policy lapse
   *
   * `PATCH /v1/courses/{courseId}`
   */
  update(courseId: string, body: CourseChange, version: RecordVersion | ChangeOptions): Answer<Course>;

  /**
   * What a student may do today, and what they still need
   *
   * `GET /v1/courses/{courseId}/students/{personId}/today`
   */
  getStudentToday(courseId: string, personId: string, options?: CallOptions): Answer<Today>;

  /**
   * Who in a course still needs what
   *
   * `GET /v1/courses/{courseId}/needs`
   */
  listNeeds(courseId: string, options?: CallOptions): Answer<Needs>;

  /**
   * What runs out in the coming days
   *
   * `GET /v1/courses/{courseId}/ending`
   */
  listEnding(courseId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<ListCourseEndingData["query"]>> | undefined }): Answer<Ending>;

  /**
   * What the class used in the last days
   *
   * `GET /v1/courses/{courseId}/usage`
   */
  usage(courseId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetCourseUsageData["query"]>> | undefined }): Answer<Usage>;
}

export function coursesOf(caller: Caller): CoursesResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/courses", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/courses", body }, options),
    get: (courseId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/courses/{}", ids: [courseId] }, options),
    update: (courseId, body, version) =>
      caller.send({ method: "PATCH", path: "/v1/courses/{}", ids: [courseId], body }, changeOptions(version)),
    getStudentToday: (courseId, personId, options) =>
      caller.send({ path: "/v1/courses/{}/students/{}/today", ids: [courseId, personId] }, options),
    listNeeds: (courseId, options) =>
      caller.send({ path: "/v1/courses/{}/needs", ids: [courseId] }, options),
    listEnding: (courseId, options) =>
      caller.send({ path: "/v1/courses/{}/ending", ids: [courseId] }, options),
    usage: (courseId, options) =>
      caller.send({ path: "/v1/courses/{}/usage", ids: [courseId] }, options),
  };
}
