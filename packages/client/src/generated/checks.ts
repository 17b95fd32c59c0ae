// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { CallOptions, Caller, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { Check, CheckAnswer, CheckRequest, ListChecksData } from "./types.gen.ts";

/** May this person run this bit on this router at this mark, now? */
export interface ChecksResource {
  /**
   * List kept checks; a member sees their own
   *
   * `GET /v1/checks`
   */
  list(query?: Loose<NonNullable<ListChecksData["query"]>>, options?: CallOptions): Pages<Check>;

  /**
   * May this person run this bit on this router at this mark, now?
   *
   * Only `isAllowed: true` is a yes; any other answer, and none at all, is a no. One that is kept as a record takes an Idempotency-Key, whose answer is repeated for two minutes, with its own `at`; any other is judged again.
   *
   * `POST /v1/checks`
   */
  ask(body: CheckRequest, options?: WriteOptions): Answer<CheckAnswer>;
}

export function checksOf(caller: Caller): ChecksResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/checks", query }, options),
    ask: (body, options) =>
      caller.send({ method: "POST", path: "/v1/checks", body }, options),
  };
}
