// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateSharpeningData,
  CreateSharpeningResponse,
  GetBitEdgeResponse,
  GetSharpeningResponse,
  ListSharpeningsData,
  ListSharpeningsResponse,
} from "./types.gen.ts";

export function sharpeningsOf(caller: Caller) {
  return {
    /** List sharpenings, with what bits measured before and after */
    list: (query?: ListSharpeningsData["query"], options?: CallOptions) =>
      caller.list<ListSharpeningsResponse["data"][number]>(
        { method: "GET", path: "/v1/sharpenings", query },
        "cursor", options,
      ),

    /** Read a sharpening */
    get: (sharpeningId: string, options?: CallOptions) =>
      caller.send<GetSharpeningResponse>(
        { method: "GET", path: "/v1/sharpenings/{sharpeningId}", pathParameters: { sharpeningId } },
        options,
      ),

    /** Estimate what is left of a bit's edge */
    getBitEdge: (bitId: string, options?: CallOptions) =>
      caller.send<GetBitEdgeResponse>(
        { method: "GET", path: "/v1/bits/{bitId}/edge", pathParameters: { bitId } },
        options,
      ),

    /** Enter a sharpening; the bit has its new dimensions from then on */
    create: (bitId: string, body: CreateSharpeningData["body"], options?: WriteOptions) =>
      caller.send<CreateSharpeningResponse>(
        { method: "POST", path: "/v1/bits/{bitId}/sharpenings", pathParameters: { bitId }, body, isWrite: true },
        options,
      ),
  };
}
