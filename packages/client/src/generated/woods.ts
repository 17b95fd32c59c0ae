// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { ListWoodsData, Wood } from "./types.gen.ts";

/** Woods and materials, with where each number comes from. */
export interface WoodsResource {
  /**
   * List woods and materials
   *
   * `GET /v1/woods`
   */
  list(query?: Loose<NonNullable<ListWoodsData["query"]>>, options?: CallOptions): Pages<Wood>;

  /**
   * Read a wood or material
   *
   * `GET /v1/woods/{woodId}`
   */
  get(woodId: string, options: ConditionalOptions): Answer<Wood | NotModified>;
  /**
   * Read a wood or material
   *
   * `GET /v1/woods/{woodId}`
   */
  get(woodId: string, options?: CallOptions): Answer<Wood>;
}

export function woodsOf(caller: Caller): WoodsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/woods", query }, options),
    get: (woodId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/woods/{}", ids: [woodId] }, options),
  };
}
