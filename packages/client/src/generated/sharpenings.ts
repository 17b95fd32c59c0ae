// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { ListSharpeningsData, NewSharpening, Sharpening } from "./types.gen.ts";

/** What bits measured before and after, and what is left of an edge. */
export interface SharpeningsResource {
  /**
   * List sharpenings, with what bits measured before and after
   *
   * `GET /v1/sharpenings`
   */
  list(query?: Loose<NonNullable<ListSharpeningsData["query"]>>, options?: CallOptions): Pages<Sharpening>;

  /**
   * Read a sharpening
   *
   * `GET /v1/sharpenings/{sharpeningId}`
   */
  get(sharpeningId: string, options: ConditionalOptions): Answer<Sharpening | NotModified>;
  /**
   * Read a sharpening
   *
   * `GET /v1/sharpenings/{sharpeningId}`
   */
  get(sharpeningId: string, options?: CallOptions): Answer<Sharpening>;

  /**
   * Enter a sharpening; the bit has its new dimensions from then on
   *
   * `POST /v1/bits/{bitId}/sharpenings`
   */
  create(bitId: string, body: NewSharpening, options?: WriteOptions): Answer<Sharpening>;
}

export function sharpeningsOf(caller: Caller): SharpeningsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/sharpenings", query }, options),
    get: (sharpeningId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/sharpenings/{}", ids: [sharpeningId] }, options),
    create: (bitId, body, options) =>
      caller.send({ method: "POST", path: "/v1/bits/{}/sharpenings", ids: [bitId], body }, options),
  };
}
