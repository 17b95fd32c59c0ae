// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { CallOptions, Caller } from "../operation.ts";
import type { Me } from "./types.gen.ts";

/** Who one is here. */
export interface MeResource {
  /**
   * Who this key belongs to and what it may do
   *
   * `GET /v1/me`
   */
  get(options?: CallOptions): Answer<Me>;
}

export function meOf(caller: Caller): MeResource {
  return {
    get: (options) =>
      caller.send({ path: "/v1/me" }, options),
  };
}
