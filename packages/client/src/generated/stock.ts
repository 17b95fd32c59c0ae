// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, Loose } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { BitSet, DueBit, HeldStock, ListBitSetsData, ListBitsToReorderData, ListDueBitsData, ListHeldBitsData, ListMostUsedBitsData, ReorderBit, UsedBit } from "./types.gen.ts";

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

  /**
   * Sets of bits that belong together, and which were sharpened apart
   *
   * `GET /v1/stock/sets`
   */
  listSets(query?: Loose<NonNullable<ListBitSetsData["query"]>>, options?: CallOptions): Pages<BitSet>;
}

export function stockOf(caller: Caller): StockResource {
  return {
    listDue: (query, options) =>
      caller.list({ path: "/v1/stock/due", query }, options),
    listHeld: (query, options) =>
      caller.list({ path: "/v1/stock/held", query }, options),
    listMostUsed: (query, options) =>
      caller.list({ path: "/v1/stock/most-used", query }, options),
    listToReorder: (query, options) =>
      caller.list({ path: "/v1/stock/reorder", query }, options),
    listSets: (query, options) =>
      caller.list({ path: "/v1/stock/sets", query }, options),
  };
}
