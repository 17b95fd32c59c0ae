// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  ConvertOutlineData,
  ConvertOutlineResponse,
} from "./types.gen.ts";

export function outlinesOf(caller: Caller) {
  return {
    /** Turn a drawn outline into the form of a custom bit */
    convert: (body: ConvertOutlineData["body"], options?: CallOptions) =>
      caller.send<ConvertOutlineResponse>(
        { method: "POST", path: "/v1/outlines/convert", body },
        options,
      ),
  };
}
