// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  AskCheckData,
  AskCheckResponse,
  ListChecksData,
  ListChecksResponse,
} from "./types.gen.ts";

export function checksOf(caller: Caller) {
  return {
    /** List kept checks; a member sees their own */
    list: (query?: ListChecksData["query"], options?: CallOptions) =>
      caller.list<ListChecksResponse["data"][number]>(
        { method: "GET", path: "/v1/checks", query },
        "cursor", options,
      ),

    /** May this person run this bit on this router at this mark, now?. Only `isAllowed: true` is a yes; any other answer, and none at all, is a no. */
    ask: (body: AskCheckData["body"], options?: WriteOptions) =>
      caller.send<AskCheckResponse>(
        { method: "POST", path: "/v1/checks", body },
        options,
      ),
  };
}
