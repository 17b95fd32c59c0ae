// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { CallOptions, Caller } from "../operation.ts";
import type { ConvertedOutline, OutlinePath } from "./types.gen.ts";

/** Outlines of bits from drawings. */
export interface OutlinesResource {
  /**
   * Turn a drawn outline into the form of a custom bit
   *
   * `POST /v1/outlines/convert`
   */
  convert(body: OutlinePath, options?: CallOptions): Answer<ConvertedOutline>;
}

export function outlinesOf(caller: Caller): OutlinesResource {
  return {
    convert: (body, options) =>
      caller.send({ method: "POST", path: "/v1/outlines/convert", body, isQuestion: true }, options),
  };
}
