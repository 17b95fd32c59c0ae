import Type, { type Static, type TObject } from "typebox";
import { PageQuery } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";
import type { EVENT_HEAD } from "./head-schema.ts";
import { type EventKind, eventsOfKind } from "./kinds-of-events.ts";
import { EventType } from "./types.ts";

/** The event of any kind of record. Its branches are known when the kinds are. */
export const EventReference = Type.Unsafe<EventRecord>({ $id: "Event" });

export const EventPageSchema = Type.Object(
  {
    data: Type.Array(ref(EventReference), { description: "Events in order." }),
    nextCursor: Type.Union([Type.String(), Type.Null()], {
      description: "Send it as `after` for more; null when these are the last so far.",
    }),
  },
  { $id: "EventPage", description: "One page of events.", additionalProperties: false },
);

const since = Type.Optional(
  Type.String({ format: "date-time", description: "Only events at or after this time (RFC 3339)." }),
);
const until = Type.Optional(
  Type.String({ format: "date-time", description: "Only events before this time (RFC 3339)." }),
);

const after = Type.Integer({
  minimum: 0,
  maximum: Number.MAX_SAFE_INTEGER,
  default: 0,
  description: "Sequence of the last event already seen; 0 starts at the first.",
});

function matching(what: string) {
  return Type.Optional(Type.String({ minLength: 1, maxLength: 200, description: `Only events ${what}.` }));
}

export const FeedQuery = Type.Object(
  {
    after,
    limit: PageQuery.properties.limit,
    subjectId: matching("of the record with this id"),
    by: matching("made with the key of this id, or by `system`"),
    type: matching("of this type, such as `bit.changed`"),
    since,
    until,
  },
  { additionalProperties: false },
);

export const StreamQuery = Type.Object({ after }, { additionalProperties: false });

export const StreamHeaders = Type.Object({
  "last-event-id": Type.Optional(
    Type.Integer({
      minimum: 0,
      maximum: Number.MAX_SAFE_INTEGER,
      description: "Sequence of the last event already seen; it is heeded before `after`.",
    }),
  ),
});

export const SummaryQuery = Type.Object({ since, until }, { additionalProperties: false });

const TypeCountSchema = Type.Object(
  {
    record: Type.String({ description: "The kind of record, such as `bit`." }),
    type: ref(EventType.schema),
    count: Type.Integer({ minimum: 1, description: "How often." }),
  },
  { additionalProperties: false },
);

const CallerSummarySchema = Type.Object(
  {
    by: Type.String({ description: "Id of the key, or `system`." }),
    byName: Type.Union([Type.String(), Type.Null()], {
      description: "The name the key has now; null for the service itself.",
    }),
    count: Type.Integer({ minimum: 1, description: "All of its events in the window." }),
    changes: Type.Array(TypeCountSchema, { description: "What it did, and how often." }),
  },
  { additionalProperties: false },
);

export const EventSummarySchema = Type.Object(
  {
    since: Type.String({ format: "date-time", description: "Start of the window, UTC." }),
    until: Type.String({ format: "date-time", description: "End of the window, UTC; not part of it." }),
    callers: Type.Array(CallerSummarySchema, { description: "Who changed something, in order of id." }),
  },
  { $id: "EventSummary", description: "Who changed what how often.", additionalProperties: false },
);

/** The components of the events of these kinds of records, in the order they refer to each other. */
export function eventComponents(kinds: readonly EventKind[]) {
  const each = kinds.map(eventsOfKind);
  const events = each.flatMap((kind) => kind.events);
  const said = "One change: who, when, what and why. What `data` holds follows from `type`.";
  const any = unionOf<EventRecord>("Event", "type", events, said);
  return [
    EventType.schema,
    ...each.map(({ fields }) => fields),
    ...events,
    any,
    EventPageSchema,
    EventSummarySchema,
  ];
}

/** An event as it is kept: its type is what was written then. */
export type EventRecord = Static<TObject<typeof EVENT_HEAD>> & {
  readonly type: string;
  readonly data: Readonly<Record<string, unknown>>;
};
export type EventSummary = Static<typeof EventSummarySchema>;
