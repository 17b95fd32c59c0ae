// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { CallOptions, Caller, Loose } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { Event, EventSummary, FollowEventsData, HistoryCheck, HistoryProof, ListEventsData, SummarizeEventsData } from "./types.gen.ts";

/** Who changed what, when and why. */
export interface EventsResource {
  /**
   * List what was changed, by whom, when and why
   *
   * All that is asked for must hold together. Events come in order of sequence, never of time.
   *
   * `GET /v1/events`
   */
  list(query?: Loose<NonNullable<ListEventsData["query"]>>, options?: CallOptions): Pages<Event>;

  /**
   * Sum up who changed what how often
   *
   * A window of at most 31 days. Without `until` it ends now, without `since` it begins 7 days before its end.
   *
   * `GET /v1/events/summary`
   */
  summarize(options?: CallOptions & { readonly query?: Loose<NonNullable<SummarizeEventsData["query"]>> | undefined }): Answer<EventSummary>;

  /**
   * Follow what is changed, as it happens
   *
   * Server-sent events: `id` is the sequence, `event` the type, `data` the event as JSON. Begins after `Last-Event-ID` or `after`, and goes on as changes are committed.
   *
   * `GET /v1/events/stream`
   */
  follow(options?: CallOptions & Loose<NonNullable<FollowEventsData["query"]>>): AsyncIterable<Event>;

  /**
   * Check that nobody has altered the history
   *
   * Recomputes the chain of hashes from what is kept, and checks every signed checkpoint against it. Every record is held against the last event about it, and the newest checkpoint that is kept beside the signing keys against the history. A history that was rewritten as a whole shows only against what was kept elsewhere: give the `head` of a backup's manifest, or a checkpoint's `sequence` and `hash`.
   *
   * `POST /v1/events/verify`
   */
  verify(body: HistoryCheck, options?: CallOptions): Answer<HistoryProof>;
}

export function eventsOf(caller: Caller): EventsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/events", query }, options, "after"),
    summarize: (options) =>
      caller.send({ path: "/v1/events/summary" }, options),
    follow: (options) =>
      caller.follow({ path: "/v1/events/stream", query: { after: options?.after } }, options),
    verify: (body, options) =>
      caller.send({ method: "POST", path: "/v1/events/verify", body, isQuestion: true }, options),
  };
}
