// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { Import, ListImportsData } from "./types.gen.ts";

/** Files of bits that were taken in. */
export interface ImportsResource {
  /**
   * List the files that changed the rack
   *
   * `GET /v1/imports`
   */
  list(query?: Loose<NonNullable<ListImportsData["query"]>>, options?: CallOptions): Pages<Import>;

  /**
   * Read what came of a file
   *
   * `GET /v1/imports/{importId}`
   */
  get(importId: string, options: ConditionalOptions): Answer<Import | NotModified>;
  /**
   * Read what came of a file
   *
   * `GET /v1/imports/{importId}`
   */
  get(importId: string, options?: CallOptions): Answer<Import>;
}

export function importsOf(caller: Caller): ImportsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/imports", query }, options),
    get: (importId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/imports/{}", ids: [importId] }, options),
  };
}
