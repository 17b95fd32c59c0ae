// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { ListSpeedTrialsData, NewSpeedTrial, ProposeSpeedTrialData, SetAside, SpeedTrial, TrialProposal } from "./types.gen.ts";

/** What bits did at which speed, and the next speed to try. */
export interface SpeedTrialsResource {
  /**
   * List speed trials
   *
   * `GET /v1/speed-trials`
   */
  list(query?: Loose<NonNullable<ListSpeedTrialsData["query"]>>, options?: CallOptions): Pages<SpeedTrial>;

  /**
   * Enter what a bit did at one speed in one router
   *
   * `POST /v1/speed-trials`
   */
  create(body: NewSpeedTrial, options?: WriteOptions): Answer<SpeedTrial>;

  /**
   * Read a speed trial
   *
   * `GET /v1/speed-trials/{speedTrialId}`
   */
  get(speedTrialId: string, options: ConditionalOptions): Answer<SpeedTrial | NotModified>;
  /**
   * Read a speed trial
   *
   * `GET /v1/speed-trials/{speedTrialId}`
   */
  get(speedTrialId: string, options?: CallOptions): Answer<SpeedTrial>;

  /**
   * Say that a trial no longer counts, such as after a new bearing
   *
   * `POST /v1/speed-trials/{speedTrialId}/set-aside`
   */
  setAside(speedTrialId: string, body: SetAside, options?: WriteOptions): Answer<SpeedTrial>;

  /**
   * The next speed to try, rising in steps from the slowest and never over the ceiling
   *
   * `GET /v1/bits/{bitId}/speed-trials/next`
   */
  propose(bitId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<ProposeSpeedTrialData["query"]>> | undefined }): Answer<TrialProposal>;
}

export function speedTrialsOf(caller: Caller): SpeedTrialsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/speed-trials", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/speed-trials", body }, options),
    get: (speedTrialId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/speed-trials/{}", ids: [speedTrialId] }, options),
    setAside: (speedTrialId, body, options) =>
      caller.send({ method: "POST", path: "/v1/speed-trials/{}/set-aside", ids: [speedTrialId], body }, options),
    propose: (bitId, options) =>
      caller.send({ path: "/v1/bits/{}/speed-trials/next", ids: [bitId] }, options),
  };
}
