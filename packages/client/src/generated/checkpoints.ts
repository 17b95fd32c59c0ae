// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { Checkpoint, ListCheckpointsData } from "./types.gen.ts";

/** Signed statements of how far the history reached. */
export interface CheckpointsResource {
  /**
   * List the signed statements about the history
   *
   * `GET /v1/events/checkpoints`
   */
  list(query?: Loose<NonNullable<ListCheckpointsData["query"]>>, options?: CallOptions): Pages<Checkpoint>;

  /**
   * Have the history signed as it stands
   *
   * The service does so by itself too: after every 1,000 events, and hourly when there are new ones.
   *
   * `POST /v1/events/checkpoints`
   */
  create(options?: WriteOptions): Answer<Checkpoint>;

  /**
   * Read a signed statement about the history
   *
   * `GET /v1/events/checkpoints/{checkpointId}`
   */
  get(checkpointId: string, options: ConditionalOptions): Answer<Checkpoint | NotModified>;
  /**
   * Read a signed statement about the history
   *
   * `GET /v1/events/checkpoints/{checkpointId}`
   */
  get(checkpointId: string, options?: CallOptions): Answer<Checkpoint>;
}

export function checkpointsOf(caller: Caller): CheckpointsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/events/checkpoints", query }, options),
    create: (options) =>
      caller.send({ method: "POST", path: "/v1/events/checkpoints" }, options),
    get: (checkpointId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/events/checkpoints/{}", ids: [checkpointId] }, options),
  };
}
