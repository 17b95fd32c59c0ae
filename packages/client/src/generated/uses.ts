// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateUseData,
  CreateUseResponse,
  GetUseResponse,
  ListUsesData,
  ListUsesResponse,
} from "./types.gen.ts";

export function usesOf(caller: Caller) {
  return {
    /** List what was done with bits. A member sees what they did themselves */
    list: (query?: ListUsesData["query"], options?: CallOptions) =>
      caller.list<ListUsesResponse["data"][number]>(
        { method: "GET", path: "/v1/uses", query },
        "cursor", options,
      ),

    /** Log work that was done; a bit that moved in its collet is held, and the collet with it. Whoever is not in charge logs what they did themselves, of late, with a bit that is or was then on loan to them; without a loan they say why. */
    create: (body: CreateUseData["body"], options?: WriteOptions) =>
      caller.send<CreateUseResponse>(
        { method: "POST", path: "/v1/uses", body, isWrite: true },
        options,
      ),

    /** Read a use */
    get: (useId: string, options?: CallOptions) =>
      caller.send<GetUseResponse>(
        { method: "GET", path: "/v1/uses/{useId}", pathParameters: { useId } },
        options,
      ),
  };
}
