// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  FollowEventsData,
  FollowEventsResponse,
  ListEventsData,
  ListEventsResponse,
  SummarizeEventsData,
  SummarizeEventsResponse,
  VerifyEventsData,
  VerifyEventsResponse,
} from "./types.gen.ts";

export function eventsOf(caller: Caller) {
  return {
    /** List what was changed, by whom, when and why. All that is asked for must hold together. Events come in order of sequence, never of time. */
    list: (query?: ListEventsData["query"], options?: CallOptions) =>
      caller.list<ListEventsResponse["data"][number]>(
        { method: "GET", path: "/v1/events", query },
        "after", options,
      ),

    /** Sum up who changed what how often. A window of at most 31 days. Without `until` it ends now, without `since` it begins 7 days before its end. */
    summarize: (options?: CallOptions & { readonly query?: SummarizeEventsData["query"] }) =>
      caller.send<SummarizeEventsResponse>(
        { method: "GET", path: "/v1/events/summary", query: options?.query },
        options,
      ),

    /** Follow what is changed, as it happens. Server-sent events: `id` is the sequence, `event` the type, `data` the event as JSON. Begins after `Last-Event-ID` or `after`, and goes on as changes are committed. */
    follow: (options?: CallOptions & FollowEventsData["query"]) =>
      caller.follow<FollowEventsResponse>(
        { method: "GET", path: "/v1/events/stream", query: { after: options?.after } },
        options,
      ),

    /** Check that nobody has altered the history. Recomputes the chain of hashes from what is kept, and checks every signed checkpoint against it. Every record is held against the last event about it, and the newest checkpoint that is kept beside the signing keys against the history. A history that was rewritten as a whole shows only against what was kept elsewhere: give the `head` of a backup's manifest, or a checkpoint's `sequence` and `hash`. */
    verify: (body: VerifyEventsData["body"], options?: CallOptions) =>
      caller.send<VerifyEventsResponse>(
        { method: "POST", path: "/v1/events/verify", body },
        options,
      ),
  };
}
