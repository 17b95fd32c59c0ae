// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type Loose, type Query, type RecordVersion, type StreamOptions, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { GetRouterLabelsData, GetRouterPictureData, GetRouterPrintoutData, ListRoutersData, NewRouter, Router, RouterChange } from "./types.gen.ts";

/** The shop's routers and their speed dials. */
export interface RoutersResource {
  /**
   * Pages to print with the labels of some routers
   *
   * `GET /v1/routers/labels`
   */
  labels(options: CallOptions & { readonly query?: Loose<NonNullable<GetRouterLabelsData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * Pages to print with the labels of some routers
   *
   * `GET /v1/routers/labels`
   */
  labels(options?: CallOptions & { readonly query?: Loose<NonNullable<GetRouterLabelsData["query"]>> | undefined }): Answer<Blob>;

  /**
   * List the routers of the shop
   *
   * `GET /v1/routers`
   */
  list(query?: Loose<NonNullable<ListRoutersData["query"]>>, options?: CallOptions): Pages<Router>;

  /**
   * Add a router
   *
   * `POST /v1/routers`
   */
  create(body: NewRouter, options?: WriteOptions): Answer<Router>;

  /**
   * Read a router
   *
   * `GET /v1/routers/{routerId}`
   */
  get(routerId: string, options: ConditionalOptions): Answer<Router | NotModified>;
  /**
   * Read a router
   *
   * `GET /v1/routers/{routerId}`
   */
  get(routerId: string, options?: CallOptions): Answer<Router>;

  /**
   * Change a router
   *
   * `PATCH /v1/routers/{routerId}`
   */
  update(routerId: string, body: RouterChange, version: RecordVersion | ChangeOptions): Answer<Router>;

  /**
   * Remove a router
   *
   * `DELETE /v1/routers/{routerId}`
   */
  delete(routerId: string, version: RecordVersion | ChangeOptions): Answer<void>;

  /**
   * The dial of a router with the fastest mark for each bit, or its bits by diameter and speed
   *
   * `GET /v1/routers/{routerId}/picture`
   */
  picture(routerId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetRouterPictureData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * The dial of a router with the fastest mark for each bit, or its bits by diameter and speed
   *
   * `GET /v1/routers/{routerId}/picture`
   */
  picture(routerId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetRouterPictureData["query"]>> | undefined }): Answer<Blob>;

  /**
   * The wall chart of a router: its bits with mark, speed, how they are held and what they never go above
   *
   * `GET /v1/routers/{routerId}/printout`
   */
  printout(routerId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetRouterPrintoutData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * The wall chart of a router: its bits with mark, speed, how they are held and what they never go above
   *
   * `GET /v1/routers/{routerId}/printout`
   */
  printout(routerId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetRouterPrintoutData["query"]>> | undefined }): Answer<Blob>;
}

export function routersOf(caller: Caller): RoutersResource {
  return {
    labels: (options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/routers/labels", answers: ["application/pdf", "text/html"] }, options),
    list: (query, options) =>
      caller.list({ path: "/v1/routers", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/routers", body }, options),
    get: (routerId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/routers/{}", ids: [routerId] }, options),
    update: (routerId, body, version) =>
      caller.send({ method: "PATCH", path: "/v1/routers/{}", ids: [routerId], body }, changeOptions(version)),
    delete: (routerId, version) =>
      caller.send({ method: "DELETE", path: "/v1/routers/{}", ids: [routerId], answers: [] }, changeOptions(version)),
    picture: (routerId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/routers/{}/picture", ids: [routerId], answers: ["image/svg+xml", "image/png"] }, options),
    printout: (routerId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/routers/{}/printout", ids: [routerId], answers: ["application/pdf", "text/html", "text/plain"] }, options),
  };
}
