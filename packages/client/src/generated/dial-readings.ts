// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { DialReading, ListDialReadingsData, NewDialReading } from "./types.gen.ts";

/** Speeds read at the marks of dials. */
export interface DialReadingsResource {
  /**
   * List speeds read at the marks of dials, those that have lapsed too
   *
   * `GET /v1/dial-readings`
   */
  list(query?: Loose<NonNullable<ListDialReadingsData["query"]>>, options?: CallOptions): Pages<DialReading>;

  /**
   * Read a dial reading
   *
   * `GET /v1/dial-readings/{dialReadingId}`
   */
  get(dialReadingId: string, options: ConditionalOptions): Answer<DialReading | NotModified>;
  /**
   * Read a dial reading
   *
   * `GET /v1/dial-readings/{dialReadingId}`
   */
  get(dialReadingId: string, options?: CallOptions): Answer<DialReading>;

  /**
   * Enter the speed read at one mark; one that does not fit the router or other readings must be confirmed
   *
   * `POST /v1/routers/{routerId}/dial-readings`
   */
  create(routerId: string, body: NewDialReading, options?: WriteOptions): Answer<DialReading>;
}

export function dialReadingsOf(caller: Caller): DialReadingsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/dial-readings", query }, options),
    get: (dialReadingId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/dial-readings/{}", ids: [dialReadingId] }, options),
    create: (routerId, body, options) =>
      caller.send({ method: "POST", path: "/v1/routers/{}/dial-readings", ids: [routerId], body }, options),
  };
}
