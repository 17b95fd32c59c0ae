// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { ListRunOutReadingsData, NewRunOutReading, RunOutReading } from "./types.gen.ts";

/** Run-out of bits as clamped in routers. */
export interface RunOutReadingsResource {
  /**
   * List run-out readings of bits as clamped in routers
   *
   * `GET /v1/run-out-readings`
   */
  list(query?: Loose<NonNullable<ListRunOutReadingsData["query"]>>, options?: CallOptions): Pages<RunOutReading>;

  /**
   * Enter a bit's run-out in one router; plans for the two use the latest
   *
   * `POST /v1/run-out-readings`
   */
  create(body: NewRunOutReading, options?: WriteOptions): Answer<RunOutReading>;

  /**
   * Read a run-out reading
   *
   * `GET /v1/run-out-readings/{runOutReadingId}`
   */
  get(runOutReadingId: string, options: ConditionalOptions): Answer<RunOutReading | NotModified>;
  /**
   * Read a run-out reading
   *
   * `GET /v1/run-out-readings/{runOutReadingId}`
   */
  get(runOutReadingId: string, options?: CallOptions): Answer<RunOutReading>;
}

export function runOutReadingsOf(caller: Caller): RunOutReadingsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/run-out-readings", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/run-out-readings", body }, options),
    get: (runOutReadingId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/run-out-readings/{}", ids: [runOutReadingId] }, options),
  };
}
