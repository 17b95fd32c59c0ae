// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  GetPolicyResponse,
} from "./types.gen.ts";

export function policyOf(caller: Caller) {
  return {
    /** Read every threshold, with its reason and source */
    get: (options?: CallOptions) =>
      caller.send<GetPolicyResponse>(
        { method: "GET", path: "/v1/policy" },
        options,
      ),
  };
}
