// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  GetMeResponse,
} from "./types.gen.ts";

export function meOf(caller: Caller) {
  return {
    /** Who this key belongs to and what it may do */
    get: (options?: CallOptions) =>
      caller.send<GetMeResponse>(
        { method: "GET", path: "/v1/me" },
        options,
      ),
  };
}
