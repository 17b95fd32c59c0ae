// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { ListTrialsData, NewSpeedTrial, ProposeTrialData, SetAside, Trial, TrialProposal } from "./types.gen.ts";

/** What bits did at which speed, and the next speed to try. */
export interface TrialsResource {
  /**
   * List speed trials
   *
   * `GET /v1/speed-trials`
   */
  list(query?: Loose<NonNullable<ListTrialsData["query"]>>, options?: CallOptions): Pages<Trial>;

  /**
   * Enter what a bit did at one speed in one router
   *
   * `POST /v1/speed-trials`
   */
  create(body: NewSpeedTrial, options?: WriteOptions): Answer<Trial>;

  /**
   * Read a speed trial
   *
   * `GET /v1/speed-trials/{trialId}`
   */
  get(trialId: string, options: ConditionalOptions): Answer<Trial | NotModified>;
  /**
   * Read a speed trial
   *
   * `GET /v1/speed-trials/{trialId}`
   */
  get(trialId: string, options?: CallOptions): Answer<Trial>;

  /**
   * Say that a trial no longer counts, such as after a new bearing
   *
   * `POST /v1/speed-trials/{trialId}/set-aside`
   */
  setTrialAside(trialId: string, body: SetAside, options?: WriteOptions): Answer<Trial>;

  /**
   * The next speed to try, rising in steps from the slowest and never over the ceiling
   *
   * `GET /v1/bits/{bitId}/speed-trials/next`
   */
  propose(bitId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<ProposeTrialData["query"]>> | undefined }): Answer<TrialProposal>;
}

export function trialsOf(caller: Caller): TrialsResource {
  return {
    list: (query, options) =>
      caller.list({ method: "GET", path: "/v1/speed-trials", query }, "cursor", options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/speed-trials", body, isWrite: true }, options),
    get: (trialId: string, options?: AnyOptions) =>
      caller.send<never>({ method: "GET", path: "/v1/speed-trials/{trialId}", pathParameters: { trialId } }, options),
    setTrialAside: (trialId, body, options) =>
      caller.send({ method: "POST", path: "/v1/speed-trials/{trialId}/set-aside", pathParameters: { trialId }, body, isWrite: true }, options),
    propose: (bitId, options) =>
      caller.send({ method: "GET", path: "/v1/bits/{bitId}/speed-trials/next", pathParameters: { bitId }, query: options?.query }, options),
  };
}
