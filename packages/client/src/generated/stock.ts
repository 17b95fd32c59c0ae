// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  ListBitsToReorderData,
  ListBitsToReorderResponse,
  ListDueBitsData,
  ListDueBitsResponse,
  ListHeldBitsData,
  ListHeldBitsResponse,
  ListMostUsedBitsData,
  ListMostUsedBitsResponse,
} from "./types.gen.ts";

export function stockOf(caller: Caller) {
  return {
    /** Which bits are due for inspection, now or within so many days */
    listDueBits: (query?: ListDueBitsData["query"], options?: CallOptions) =>
      caller.list<ListDueBitsResponse["data"][number]>(
        { method: "GET", path: "/v1/stock/due", query },
        "cursor", options,
      ),

    /** Which bits are held, since when, why and by whom */
    listHeldBits: (query?: ListHeldBitsData["query"], options?: CallOptions) =>
      caller.list<ListHeldBitsResponse["data"][number]>(
        { method: "GET", path: "/v1/stock/held", query },
        "cursor", options,
      ),

    /** Which bits are used most */
    listMostUsedBits: (query?: ListMostUsedBitsData["query"], options?: CallOptions) =>
      caller.list<ListMostUsedBitsResponse["data"][number]>(
        { method: "GET", path: "/v1/stock/most-used", query },
        "cursor", options,
      ),

    /** Which bits to reorder, and why */
    listBitsToReorder: (query?: ListBitsToReorderData["query"], options?: CallOptions) =>
      caller.list<ListBitsToReorderResponse["data"][number]>(
        { method: "GET", path: "/v1/stock/reorder", query },
        "cursor", options,
      ),
  };
}
