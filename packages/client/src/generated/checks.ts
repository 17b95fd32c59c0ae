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

    /** May this person run this bit on this router at this mark, now?. Only `isAllowed: true` is a yes; any other answer, and none at all, is a no. One that is kept as a record takes an Idempotency-Key, whose answer is repeated for two minutes, with its own `at`; any other is judged again. */
    ask: (body: AskCheckData["body"], options?: WriteOptions) =>
      caller.send<AskCheckResponse>(
        { method: "POST", path: "/v1/checks", body, isWrite: true },
        options,
      ),
  };
}
