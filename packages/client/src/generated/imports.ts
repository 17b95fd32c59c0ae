// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  GetImportResponse,
  ListImportsData,
  ListImportsResponse,
} from "./types.gen.ts";

export function importsOf(caller: Caller) {
  return {
    /** List the files that changed the rack */
    list: (query?: ListImportsData["query"], options?: CallOptions) =>
      caller.list<ListImportsResponse["data"][number]>(
        { method: "GET", path: "/v1/imports", query },
        "cursor", options,
      ),

    /** Read what came of a file */
    get: (importId: string, options?: CallOptions) =>
      caller.send<GetImportResponse>(
        { method: "GET", path: "/v1/imports/{importId}", pathParameters: { importId } },
        options,
      ),
  };
}
