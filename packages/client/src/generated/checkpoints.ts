// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller, WriteOptions } from "../operation.ts";
import type {
  CreateCheckpointResponse,
  GetCheckpointResponse,
  ListCheckpointsData,
  ListCheckpointsResponse,
} from "./types.gen.ts";

export function checkpointsOf(caller: Caller) {
  return {
    /** List the signed statements about the history */
    list: (query?: ListCheckpointsData["query"], options?: CallOptions) =>
      caller.list<ListCheckpointsResponse["data"][number]>(
        { method: "GET", path: "/v1/events/checkpoints", query },
        "cursor", options,
      ),

    /** Have the history signed as it stands. The service does so by itself too: after every 1,000 events, and hourly when there are new ones. */
    create: (options?: WriteOptions) =>
      caller.send<CreateCheckpointResponse>(
        { method: "POST", path: "/v1/events/checkpoints", isWrite: true },
        options,
      ),

    /** Read a signed statement about the history */
    get: (checkpointId: string, options?: CallOptions) =>
      caller.send<GetCheckpointResponse>(
        { method: "GET", path: "/v1/events/checkpoints/{checkpointId}", pathParameters: { checkpointId } },
        options,
      ),
  };
}
