// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateEnrolmentData,
  CreateEnrolmentResponse,
  CreateManyEnrolmentsData,
  CreateManyEnrolmentsResponse,
  EndEnrolmentResponse,
  ListEnrolmentsData,
  ListEnrolmentsResponse,
} from "./types.gen.ts";

export function enrolmentsOf(caller: Caller) {
  return {
    /** List who takes part in which course; a member sees their own */
    list: (query?: ListEnrolmentsData["query"], options?: CallOptions) =>
      caller.list<ListEnrolmentsResponse["data"][number]>(
        { method: "GET", path: "/v1/enrolments", query },
        "cursor", options,
      ),

    /** Take somebody into a course; only a manager makes somebody its instructor */
    create: (courseId: string, body: CreateEnrolmentData["body"], options?: WriteOptions) =>
      caller.send<CreateEnrolmentResponse>(
        { method: "POST", path: "/v1/courses/{courseId}/enrolments", pathParameters: { courseId }, body, isWrite: true },
        options,
      ),

    /** Take many people into a course; only a manager makes somebody its instructor */
    createMany: (courseId: string, body: CreateManyEnrolmentsData["body"], options?: WriteOptions & { readonly query?: CreateManyEnrolmentsData["query"] }) =>
      caller.send<CreateManyEnrolmentsResponse>(
        { method: "POST", path: "/v1/courses/{courseId}/enrolments/batch", pathParameters: { courseId }, query: options?.query, body, isWrite: true },
        options,
      ),

    /** End somebody's part in a course */
    end: (enrolmentId: string, options?: WriteOptions) =>
      caller.send<EndEnrolmentResponse>(
        { method: "POST", path: "/v1/enrolments/{enrolmentId}/end", pathParameters: { enrolmentId }, isWrite: true },
        options,
      ),
  };
}
