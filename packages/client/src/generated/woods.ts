// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  GetWoodResponse,
  ListWoodsData,
  ListWoodsResponse,
} from "./types.gen.ts";

export function woodsOf(caller: Caller) {
  return {
    /** List woods and materials */
    list: (query?: ListWoodsData["query"], options?: CallOptions) =>
      caller.list<ListWoodsResponse["data"][number]>(
        { method: "GET", path: "/v1/woods", query },
        "cursor", options,
      ),

    /** Read a wood or material */
    get: (woodId: string, options?: CallOptions) =>
      caller.send<GetWoodResponse>(
        { method: "GET", path: "/v1/woods/{woodId}", pathParameters: { woodId } },
        options,
      ),
  };
}
