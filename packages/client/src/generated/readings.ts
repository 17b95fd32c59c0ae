// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateReadingData,
  CreateReadingResponse,
  GetReadingResponse,
  ListReadingsData,
  ListReadingsResponse,
} from "./types.gen.ts";

export function readingsOf(caller: Caller) {
  return {
    /** List speeds read at the marks of dials, those that have lapsed too */
    list: (query?: ListReadingsData["query"], options?: CallOptions) =>
      caller.list<ListReadingsResponse["data"][number]>(
        { method: "GET", path: "/v1/dial-readings", query },
        "cursor", options,
      ),

    /** Read a dial reading */
    get: (readingId: string, options?: CallOptions) =>
      caller.send<GetReadingResponse>(
        { method: "GET", path: "/v1/dial-readings/{readingId}", pathParameters: { readingId } },
        options,
      ),

    /** Enter the speed read at one mark; one that does not fit the router or other readings must be confirmed */
    create: (routerId: string, body: CreateReadingData["body"], options?: WriteOptions) =>
      caller.send<CreateReadingResponse>(
        { method: "POST", path: "/v1/routers/{routerId}/dial-readings", pathParameters: { routerId }, body, isWrite: true },
        options,
      ),
  };
}
