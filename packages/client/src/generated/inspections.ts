// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { Inspection, ListInspectionsData, NewInspection } from "./types.gen.ts";

/** What was found on bits, and what follows. */
export interface InspectionsResource {
  /**
   * List what was found on bits
   *
   * `GET /v1/inspections`
   */
  list(query?: Loose<NonNullable<ListInspectionsData["query"]>>, options?: CallOptions): Pages<Inspection>;

  /**
   * Read an inspection
   *
   * `GET /v1/inspections/{inspectionId}`
   */
  get(inspectionId: string, options: ConditionalOptions): Answer<Inspection | NotModified>;
  /**
   * Read an inspection
   *
   * `GET /v1/inspections/{inspectionId}`
   */
  get(inspectionId: string, options?: CallOptions): Answer<Inspection>;

  /**
   * Enter an inspection; it may hold the bit or end it
   *
   * `POST /v1/bits/{bitId}/inspections`
   */
  create(bitId: string, body: NewInspection, options?: WriteOptions): Answer<Inspection>;
}

export function inspectionsOf(caller: Caller): InspectionsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/inspections", query }, options),
    get: (inspectionId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/inspections/{}", ids: [inspectionId] }, options),
    create: (bitId, body, options) =>
      caller.send({ method: "POST", path: "/v1/bits/{}/inspections", ids: [bitId], body }, options),
  };
}
