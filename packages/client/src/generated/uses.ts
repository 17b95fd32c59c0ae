// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, ConditionalOptions, Loose, WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { ListUsesData, NewUse, Use } from "./types.gen.ts";

/** Work that was done, and what happened. */
export interface UsesResource {
  /**
   * List what was done with bits. A member sees what they did themselves
   *
   * `GET /v1/uses`
   */
  list(query?: Loose<NonNullable<ListUsesData["query"]>>, options?: CallOptions): Pages<Use>;

  /**
   * Log work that was done; a bit that moved in its collet is held, and the collet with it
   *
   * Whoever is not in charge logs what they did themselves, of late, with a bit that is or was then on loan to them; without a loan they say why.
   *
   * `POST /v1/uses`
   */
  create(body: NewUse, options?: WriteOptions): Answer<Use>;

  /**
   * Read a use
   *
   * `GET /v1/uses/{useId}`
   */
  get(useId: string, options: ConditionalOptions): Answer<Use | NotModified>;
  /**
   * Read a use
   *
   * `GET /v1/uses/{useId}`
   */
  get(useId: string, options?: CallOptions): Answer<Use>;
}

export function usesOf(caller: Caller): UsesResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/uses", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/uses", body }, options),
    get: (useId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/uses/{}", ids: [useId] }, options),
  };
}
