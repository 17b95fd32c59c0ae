// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type Loose, type RecordVersion, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { Collet, ColletChange, ListColletsData, NewCollet } from "./types.gen.ts";

/** Routers' collets and their condition. */
export interface ColletsResource {
  /**
   * List the collets of the routers
   *
   * `GET /v1/collets`
   */
  list(query?: Loose<NonNullable<ListColletsData["query"]>>, options?: CallOptions): Pages<Collet>;

  /**
   * Enter a collet; a size whose every collet is held or retired is not used
   *
   * `POST /v1/collets`
   */
  create(body: NewCollet, options?: WriteOptions): Answer<Collet>;

  /**
   * Read a collet
   *
   * `GET /v1/collets/{colletId}`
   */
  get(colletId: string, options: ConditionalOptions): Answer<Collet | NotModified>;
  /**
   * Read a collet
   *
   * `GET /v1/collets/{colletId}`
   */
  get(colletId: string, options?: CallOptions): Answer<Collet>;

  /**
   * Change a collet, or release one that was held
   *
   * `PATCH /v1/collets/{colletId}`
   */
  update(colletId: string, body: ColletChange, version: RecordVersion | ChangeOptions): Answer<Collet>;
}

export function colletsOf(caller: Caller): ColletsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/collets", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/collets", body }, options),
    get: (colletId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/collets/{}", ids: [colletId] }, options),
    update: (colletId, body, version) =>
      caller.send({ method: "PATCH", path: "/v1/collets/{}", ids: [colletId], body }, changeOptions(version)),
  };
}
