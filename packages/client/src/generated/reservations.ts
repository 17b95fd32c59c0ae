// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, Loose } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { ListReservationsData, Reservation } from "./types.gen.ts";

/** Bits that are kept for the days of a job. */
export interface ReservationsResource {
  /**
   * List the bits that are or were kept for jobs
   *
   * `GET /v1/reservations`
   */
  list(query?: Loose<NonNullable<ListReservationsData["query"]>>, options?: CallOptions): Pages<Reservation>;
}

export function reservationsOf(caller: Caller): ReservationsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/reservations", query }, options),
  };
}
