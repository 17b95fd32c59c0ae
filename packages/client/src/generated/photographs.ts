// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { bodyOrFile, changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type FileBody, type Loose, type RecordVersion, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { ListPhotographsData, NewPhotograph, Photograph, PhotographContent } from "./types.gen.ts";

/** Photographs of bits. */
export interface PhotographsResource {
  /**
   * List photographs of bits, without their bytes
   *
   * `GET /v1/photographs`
   */
  list(query?: Loose<NonNullable<ListPhotographsData["query"]>>, options?: CallOptions): Pages<Photograph>;

  /**
   * Read about a photograph
   *
   * `GET /v1/photographs/{photographId}`
   */
  get(photographId: string, options: ConditionalOptions): Answer<Photograph | NotModified>;
  /**
   * Read about a photograph
   *
   * `GET /v1/photographs/{photographId}`
   */
  get(photographId: string, options?: CallOptions): Answer<Photograph>;

  /**
   * Remove a photograph
   *
   * `DELETE /v1/photographs/{photographId}`
   */
  delete(photographId: string, version: RecordVersion | ChangeOptions): Answer<void>;

  /**
   * Read a photograph itself
   *
   * `GET /v1/photographs/{photographId}/content`
   */
  content(photographId: string, options?: CallOptions): Answer<PhotographContent>;

  /**
   * Add a photograph of a bit, at most 12 of each
   *
   * As JSON, or as the image itself with its own type. Only the picture is kept, turned as it was: where and when it was taken, by whom and with what is removed.
   *
   * `POST /v1/bits/{bitId}/photographs`
   */
  create(bitId: string, body: NewPhotograph | FileBody<"image/jpeg" | "image/png" | "image/webp">, options?: WriteOptions): Answer<Photograph>;
}

export function photographsOf(caller: Caller): PhotographsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/photographs", query }, options),
    get: (photographId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/photographs/{}", ids: [photographId] }, options),
    delete: (photographId, version) =>
      caller.send({ method: "DELETE", path: "/v1/photographs/{}", ids: [photographId], answers: [] }, changeOptions(version)),
    content: (photographId, options) =>
      caller.send({ path: "/v1/photographs/{}/content", ids: [photographId] }, options),
    create: (bitId, body, options) =>
      caller.send({ method: "POST", path: "/v1/bits/{}/photographs", ids: [bitId], ...bodyOrFile(body) }, options),
  };
}
