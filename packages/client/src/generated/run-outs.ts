// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateRunOutData,
  CreateRunOutResponse,
  GetRunOutResponse,
  ListRunOutsData,
  ListRunOutsResponse,
} from "./types.gen.ts";

export function runOutsOf(caller: Caller) {
  return {
    /** List run-out readings of bits as clamped in routers */
    list: (query?: ListRunOutsData["query"], options?: CallOptions) =>
      caller.list<ListRunOutsResponse["data"][number]>(
        { method: "GET", path: "/v1/run-out-readings", query },
        "cursor", options,
      ),

    /** Enter a bit's run-out in one router; plans for the two use the latest */
    create: (body: CreateRunOutData["body"], options?: WriteOptions) =>
      caller.send<CreateRunOutResponse>(
        { method: "POST", path: "/v1/run-out-readings", body, isWrite: true },
        options,
      ),

    /** Read a run-out reading */
    get: (readingId: string, options?: CallOptions) =>
      caller.send<GetRunOutResponse>(
        { method: "GET", path: "/v1/run-out-readings/{readingId}", pathParameters: { readingId } },
        options,
      ),
  };
}
