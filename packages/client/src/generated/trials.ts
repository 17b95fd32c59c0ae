// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateTrialData,
  CreateTrialResponse,
  GetTrialResponse,
  ListTrialsData,
  ListTrialsResponse,
  ProposeTrialData,
  ProposeTrialResponse,
  SetTrialAsideData,
  SetTrialAsideResponse,
} from "./types.gen.ts";

export function trialsOf(caller: Caller) {
  return {
    /** List speed trials */
    list: (query?: ListTrialsData["query"], options?: CallOptions) =>
      caller.list<ListTrialsResponse["data"][number]>(
        { method: "GET", path: "/v1/speed-trials", query },
        "cursor", options,
      ),

    /** Enter what a bit did at one speed in one router */
    create: (body: CreateTrialData["body"], options?: WriteOptions) =>
      caller.send<CreateTrialResponse>(
        { method: "POST", path: "/v1/speed-trials", body, isWrite: true },
        options,
      ),

    /** Read a speed trial */
    get: (trialId: string, options?: CallOptions) =>
      caller.send<GetTrialResponse>(
        { method: "GET", path: "/v1/speed-trials/{trialId}", pathParameters: { trialId } },
        options,
      ),

    /** Say that a trial no longer counts, such as after a new bearing */
    setTrialAside: (trialId: string, body: SetTrialAsideData["body"], options?: WriteOptions) =>
      caller.send<SetTrialAsideResponse>(
        { method: "POST", path: "/v1/speed-trials/{trialId}/set-aside", pathParameters: { trialId }, body, isWrite: true },
        options,
      ),

    /** The next speed to try, rising in steps from the slowest and never over the ceiling */
    propose: (bitId: string, options?: CallOptions & { readonly query?: ProposeTrialData["query"] }) =>
      caller.send<ProposeTrialResponse>(
        { method: "GET", path: "/v1/bits/{bitId}/speed-trials/next", pathParameters: { bitId }, query: options?.query },
        options,
      ),
  };
}
