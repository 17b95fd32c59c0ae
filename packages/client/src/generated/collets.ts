// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type Version, type WriteOptions } from "../operation.ts";
import type {
  CreateColletData,
  CreateColletResponse,
  GetColletResponse,
  ListColletsData,
  ListColletsResponse,
  UpdateColletData,
  UpdateColletResponse,
} from "./types.gen.ts";

export function colletsOf(caller: Caller) {
  return {
    /** List the collets of the routers */
    list: (query?: ListColletsData["query"], options?: CallOptions) =>
      caller.list<ListColletsResponse["data"][number]>(
        { method: "GET", path: "/v1/collets", query },
        "cursor", options,
      ),

    /** Enter a collet; a size whose every collet is held or retired is not used */
    create: (body: CreateColletData["body"], options?: WriteOptions) =>
      caller.send<CreateColletResponse>(
        { method: "POST", path: "/v1/collets", body, isWrite: true },
        options,
      ),

    /** Read a collet */
    get: (colletId: string, options?: CallOptions) =>
      caller.send<GetColletResponse>(
        { method: "GET", path: "/v1/collets/{colletId}", pathParameters: { colletId } },
        options,
      ),

    /** Change a collet, or release one that was held */
    update: (colletId: string, body: UpdateColletData["body"], version: Version | ChangeOptions) =>
      caller.send<UpdateColletResponse>(
        { method: "PATCH", path: "/v1/collets/{colletId}", pathParameters: { colletId }, body, isWrite: true },
        changeOptions(version),
      ),
  };
}
