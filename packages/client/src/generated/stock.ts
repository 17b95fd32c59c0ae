// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, Loose } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { DueBit, HeldStock, ListBitsToReorderData, ListDueBitsData, ListHeldBitsData, ListMostUsedBitsData, ReorderBit, UsedBit } from "./types.gen.ts";

/** What is due, most used, and to reorder. */
export interface StockResource {
  /**
   * Which bits are due for inspection, now or within so many days
   *
   * `GET /v1/stock/due`
   */
  listDue(query?: Loose<NonNullable<ListDueBitsData["query"]>>, options?: CallOptions): Pages<DueBit>;

  /**
   * Which bits are held, since when, why and by whom
   *
   * `GET /v1/stock/held`
   */
  listHeld(query?: Loose<NonNullable<ListHeldBitsData["query"]>>, options?: CallOptions): Pages<HeldStock>;

  /**
   * Which bits are used most
   *
   * `GET /v1/stock/most-used`
   */
  listMostUsed(query?: Loose<NonNullable<ListMostUsedBitsData["query"]>>, options?: CallOptions): Pages<UsedBit>;

  /**
   * Which bits to reorder, and why
   *
   * `GET /v1/stock/reorder`
   */
  listToReorder(query?: Loose<NonNullable<ListBitsToReorderData["query"]>>, options?: CallOptions): Pages<ReorderBit>;
}

export function stockOf(caller: Caller): StockResource {
  return {
    listDue: (query, options) =>
      caller.list({ method: "GET", path: "/v1/stock/due", query }, "cursor", options),
    listHeld: (query, options) =>
      caller.list({ method: "GET", path: "/v1/stock/held", query }, "cursor", options),
    listMostUsed: (query, options) =>
      caller.list({ method: "GET", path: "/v1/stock/most-used", query }, "cursor", options),
    listToReorder: (query, options) =>
      caller.list({ method: "GET", path: "/v1/stock/reorder", query }, "cursor", options),
  };
}
