// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateInspectionData,
  CreateInspectionResponse,
  GetInspectionResponse,
  ListInspectionsData,
  ListInspectionsResponse,
} from "./types.gen.ts";

export function inspectionsOf(caller: Caller) {
  return {
    /** List what was found on bits */
    list: (query?: ListInspectionsData["query"], options?: CallOptions) =>
      caller.list<ListInspectionsResponse["data"][number]>(
        { method: "GET", path: "/v1/inspections", query },
        "cursor", options,
      ),

    /** Read an inspection */
    get: (inspectionId: string, options?: CallOptions) =>
      caller.send<GetInspectionResponse>(
        { method: "GET", path: "/v1/inspections/{inspectionId}", pathParameters: { inspectionId } },
        options,
      ),

    /** Enter an inspection; it may hold the bit or end it */
    create: (bitId: string, body: CreateInspectionData["body"], options?: WriteOptions) =>
      caller.send<CreateInspectionResponse>(
        { method: "POST", path: "/v1/bits/{bitId}/inspections", pathParameters: { bitId }, body, isWrite: true },
        options,
      ),
  };
}
