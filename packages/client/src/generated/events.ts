// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  ListEventsData,
  ListEventsResponse,
} from "./types.gen.ts";

export function eventsOf(caller: Caller) {
  return {
    /** List what was changed, by whom and when */
    list: (query?: ListEventsData["query"], options?: CallOptions) =>
      caller.list<ListEventsResponse["data"][number]>(
        { method: "GET", path: "/v1/events", query },
        "after", options,
      ),
  };
}
