// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type Version, type WriteOptions } from "../operation.ts";
import type {
  CreateCourseData,
  CreateCourseResponse,
  GetCourseResponse,
  GetCourseUsageData,
  GetCourseUsageResponse,
  GetStudentTodayResponse,
  ListCourseEndingData,
  ListCourseEndingResponse,
  ListCourseNeedsResponse,
  ListCoursesData,
  ListCoursesResponse,
  UpdateCourseData,
  UpdateCourseResponse,
} from "./types.gen.ts";

export function coursesOf(caller: Caller) {
  return {
    /** List courses; a member sees those they take part in */
    list: (query?: ListCoursesData["query"], options?: CallOptions) =>
      caller.list<ListCoursesResponse["data"][number]>(
        { method: "GET", path: "/v1/courses", query },
        "cursor", options,
      ),

    /** Set up a course */
    create: (body: CreateCourseData["body"], options?: WriteOptions) =>
      caller.send<CreateCourseResponse>(
        { method: "POST", path: "/v1/courses", body, isWrite: true },
        options,
      ),

    /** Read a course */
    get: (courseId: string, options?: CallOptions) =>
      caller.send<GetCourseResponse>(
        { method: "GET", path: "/v1/courses/{courseId}", pathParameters: { courseId } },
        options,
      ),

    /** Change a course; settings whose plan changes under its policy lapse */
    update: (courseId: string, body: UpdateCourseData["body"], version: Version | ChangeOptions) =>
      caller.send<UpdateCourseResponse>(
        { method: "PATCH", path: "/v1/courses/{courseId}", pathParameters: { courseId }, body, isWrite: true },
        changeOptions(version),
      ),

    /** What a student may do today, and what they still need */
    getStudentToday: (courseId: string, personId: string, options?: CallOptions) =>
      caller.send<GetStudentTodayResponse>(
        { method: "GET", path: "/v1/courses/{courseId}/students/{personId}/today", pathParameters: { courseId, personId } },
        options,
      ),

    /** Who in a course still needs what */
    listCourseNeeds: (courseId: string, options?: CallOptions) =>
      caller.send<ListCourseNeedsResponse>(
        { method: "GET", path: "/v1/courses/{courseId}/needs", pathParameters: { courseId } },
        options,
      ),

    /** What runs out in the coming days */
    listCourseEnding: (courseId: string, options?: CallOptions & { readonly query?: ListCourseEndingData["query"] }) =>
      caller.send<ListCourseEndingResponse>(
        { method: "GET", path: "/v1/courses/{courseId}/ending", pathParameters: { courseId }, query: options?.query },
        options,
      ),

    /** What the class used in the last days */
    getCourseUsage: (courseId: string, options?: CallOptions & { readonly query?: GetCourseUsageData["query"] }) =>
      caller.send<GetCourseUsageResponse>(
        { method: "GET", path: "/v1/courses/{courseId}/usage", pathParameters: { courseId }, query: options?.query },
        options,
      ),
  };
}
