// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateManyQualificationsData,
  CreateManyQualificationsResponse,
  CreateQualificationData,
  CreateQualificationResponse,
  GetQualificationResponse,
  ListQualificationsData,
  ListQualificationsResponse,
  WithdrawQualificationData,
  WithdrawQualificationResponse,
} from "./types.gen.ts";

export function qualificationsOf(caller: Caller) {
  return {
    /** List what people are qualified for; a member sees their own */
    list: (query?: ListQualificationsData["query"], options?: CallOptions) =>
      caller.list<ListQualificationsResponse["data"][number]>(
        { method: "GET", path: "/v1/qualifications", query },
        "cursor", options,
      ),

    /** Sign what somebody was tested on, showed or was allowed. One of a course counts in that course only; its instructors and managers sign and withdraw it. One of the shop, without a course, counts in every course; any instructor signs it, and whoever signed it or a manager withdraws it. Whoever is in charge sees all, others their own. */
    create: (body: CreateQualificationData["body"], options?: WriteOptions) =>
      caller.send<CreateQualificationResponse>(
        { method: "POST", path: "/v1/qualifications", body, isWrite: true },
        options,
      ),

    /** Read a qualification */
    get: (qualificationId: string, options?: CallOptions) =>
      caller.send<GetQualificationResponse>(
        { method: "GET", path: "/v1/qualifications/{qualificationId}", pathParameters: { qualificationId } },
        options,
      ),

    /** Sign what many people were tested on, showed or were allowed */
    createMany: (body: CreateManyQualificationsData["body"], options?: WriteOptions & { readonly query?: CreateManyQualificationsData["query"] }) =>
      caller.send<CreateManyQualificationsResponse>(
        { method: "POST", path: "/v1/qualifications/batch", query: options?.query, body, isWrite: true },
        options,
      ),

    /** Say that a qualification no longer counts */
    withdraw: (qualificationId: string, body: WithdrawQualificationData["body"], options?: WriteOptions) =>
      caller.send<WithdrawQualificationResponse>(
        { method: "POST", path: "/v1/qualifications/{qualificationId}/withdraw", pathParameters: { qualificationId }, body, isWrite: true },
        options,
      ),
  };
}
