// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { CreateManyQualificationsData, CreatedQualifications, ListQualificationsData, NewQualification, NewQualifications, Qualification, Reason } from "./types.gen.ts";

/** What people were tested on, showed and were allowed. */
export interface QualificationsResource {
  /**
   * List what people are qualified for; a member sees their own
   *
   * `GET /v1/qualifications`
   */
  list(query?: Loose<NonNullable<ListQualificationsData["query"]>>, options?: CallOptions): Pages<Qualification>;

  /**
   * Sign what somebody was tested on, showed or was allowed
   *
   * One of a course counts in that course only; its instructors and managers sign and withdraw it. One of the shop, without a course, counts in every course; any instructor signs it, and whoever signed it or a manager withdraws it. Whoever is in charge sees all, others their own.
   *
   * `POST /v1/qualifications`
   */
  create(body: NewQualification, options?: WriteOptions): Answer<Qualification>;

  /**
   * Read a qualification
   *
   * `GET /v1/qualifications/{qualificationId}`
   */
  get(qualificationId: string, options: ConditionalOptions): Answer<Qualification | NotModified>;
  /**
   * Read a qualification
   *
   * `GET /v1/qualifications/{qualificationId}`
   */
  get(qualificationId: string, options?: CallOptions): Answer<Qualification>;

  /**
   * Sign what many people were tested on, showed or were allowed
   *
   * `POST /v1/qualifications/batch`
   */
  createMany(body: NewQualifications, options?: WriteOptions & { readonly query?: Loose<NonNullable<CreateManyQualificationsData["query"]>> | undefined }): Answer<CreatedQualifications>;

  /**
   * Say that a qualification no longer counts
   *
   * `POST /v1/qualifications/{qualificationId}/withdraw`
   */
  withdraw(qualificationId: string, body: Reason, options?: WriteOptions): Answer<Qualification>;
}

export function qualificationsOf(caller: Caller): QualificationsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/qualifications", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/qualifications", body }, options),
    get: (qualificationId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/qualifications/{}", ids: [qualificationId] }, options),
    createMany: (body, options) =>
      caller.send({ method: "POST", path: "/v1/qualifications/batch", body }, options),
    withdraw: (qualificationId, body, options) =>
      caller.send({ method: "POST", path: "/v1/qualifications/{}/withdraw", ids: [qualificationId], body }, options),
  };
}
