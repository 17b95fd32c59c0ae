// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type CreateOptions, type Version } from "../operation.ts";
import type {
  CreateBitData,
  CreateBitResponse,
  DeleteBitResponse,
  GetBitResponse,
  ListBitsData,
  ListBitsResponse,
  UpdateBitData,
  UpdateBitResponse,
} from "./types.gen.ts";

export function bitsOf(caller: Caller) {
  return {
    /** List the bits on the rack */
    list: (query?: ListBitsData["query"], options?: CallOptions) =>
      caller.list<ListBitsResponse["data"][number]>(
        { method: "GET", path: "/v1/bits", query },
        "cursor", options,
      ),

    /** Put a bit on the rack */
    create: (body: CreateBitData["body"], options?: CreateOptions) =>
      caller.send<CreateBitResponse>(
        { method: "POST", path: "/v1/bits", body, createsOnce: true },
        options,
      ),

    /** Read a bit */
    get: (bitId: string, options?: CallOptions) =>
      caller.send<GetBitResponse>(
        { method: "GET", path: "/v1/bits/{bitId}", pathParameters: { bitId } },
        options,
      ),

    /** Change a bit */
    update: (bitId: string, body: UpdateBitData["body"], version: Version | ChangeOptions) =>
      caller.send<UpdateBitResponse>(
        { method: "PATCH", path: "/v1/bits/{bitId}", pathParameters: { bitId }, body },
        changeOptions(version),
      ),

    /** Take a bit off the rack */
    delete: (bitId: string, version: Version | ChangeOptions) =>
      caller.send<DeleteBitResponse>(
        { method: "DELETE", path: "/v1/bits/{bitId}", pathParameters: { bitId } },
        changeOptions(version),
      ),
  };
}
