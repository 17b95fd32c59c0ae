// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type Version, type WriteOptions } from "../operation.ts";
import type {
  CreatePhotographData,
  CreatePhotographResponse,
  DeletePhotographResponse,
  GetPhotographContentResponse,
  GetPhotographResponse,
  ListPhotographsData,
  ListPhotographsResponse,
} from "./types.gen.ts";

export function photographsOf(caller: Caller) {
  return {
    /** List photographs of bits, without their bytes */
    list: (query?: ListPhotographsData["query"], options?: CallOptions) =>
      caller.list<ListPhotographsResponse["data"][number]>(
        { method: "GET", path: "/v1/photographs", query },
        "cursor", options,
      ),

    /** Read about a photograph */
    get: (photographId: string, options?: CallOptions) =>
      caller.send<GetPhotographResponse>(
        { method: "GET", path: "/v1/photographs/{photographId}", pathParameters: { photographId } },
        options,
      ),

    /** Remove a photograph */
    delete: (photographId: string, version: Version | ChangeOptions) =>
      caller.send<DeletePhotographResponse>(
        { method: "DELETE", path: "/v1/photographs/{photographId}", pathParameters: { photographId }, isWrite: true, answers: [] },
        changeOptions(version),
      ),

    /** Read a photograph itself */
    getPhotographContent: (photographId: string, options?: CallOptions) =>
      caller.send<GetPhotographContentResponse>(
        { method: "GET", path: "/v1/photographs/{photographId}/content", pathParameters: { photographId } },
        options,
      ),

    /** Add a photograph of a bit, at most 12 of each. As JSON, or as the image itself with its own type. Only the picture is kept, turned as it was: where and when it was taken, by whom and with what is removed. */
    create: (bitId: string, body: CreatePhotographData["body"], options?: WriteOptions) =>
      caller.send<CreatePhotographResponse>(
        { method: "POST", path: "/v1/bits/{bitId}/photographs", pathParameters: { bitId }, body, isWrite: true },
        options,
      ),
  };
}
