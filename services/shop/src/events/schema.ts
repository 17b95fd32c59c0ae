import Type, { type Static, type TObject, type TProperties } from "typebox";
import { PageQuery } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { unionOf } from "../http/union.ts";
import { EventType } from "./types.ts";

const SHA256_HEX = "^[0-9a-f]{64}$";

/** SHA-256 in hex. */
export function hashField(description: string) {
  return Type.String({ pattern: SHA256_HEX, description });
}

const head = {
  sequence: Type.Integer({ minimum: 1, description: "Its place in the order of things, without gaps." }),
  at: Type.String({ format: "date-time", description: "When it happened, UTC, by the service's clock." }),
  by: Type.String({ description: "Id of the key that did it, or `system`." }),
  requestId: Type.String({ description: "The request that did it." }),
  subjectId: Type.String({ description: "Id of the record it happened to." }),
  subjectVersion: Type.Integer({
    minimum: 1,
    description: "Version of the record after it; before it on a removal.",
  }),
  previousHash: hashField("Hash of the event before; zeros on the first."),
  why: Type.Optional(Type.String({ description: "The `Change-Reason` that was given with the request." })),
  recordDigest: Type.Optional(
    hashField("Digest of the whole record after it, as it is kept; absent of a removal."),
  ),
  hash: hashField("SHA-256 of this event without `hash`, in canonical JSON (RFC 8785)."),
};

const someFields = (description: string) =>
  Type.Unsafe<Record<string, unknown>>({ type: "object", additionalProperties: true, description });
const fieldsBefore = someFields("Its fields before, those that matter.");
const fieldsAfter = someFields("Its fields after, those that matter.");

/** Events of some types, with the data that these have. */
function eventOf<Data extends TProperties>(
  $id: string,
  types: readonly string[],
  data: Data,
  description: string,
) {
  return Type.Object(
    {
      ...head,
      type: Type.Enum([...types], { type: "string", description: "What happened." }),
      data: Type.Object(data, { description: "What changed.", additionalProperties: false }),
    },
    { description, additionalProperties: false, $id },
  );
}

const types = EventType.schema.enum;
const isNew = (type: string) => type.endsWith(".created");
const isEnd = (type: string) => type.endsWith(".removed");

const CreationEvent = eventOf(
  "CreationEvent",
  types.filter(isNew),
  { after: fieldsAfter },
  "A record was entered.",
);
const RemovalEvent = eventOf(
  "RemovalEvent",
  types.filter(isEnd),
  { before: fieldsBefore },
  "A record was removed.",
);
const ChangeEvent = eventOf(
  "ChangeEvent",
  types.filter((type) => !isNew(type) && !isEnd(type)),
  { before: Type.Optional(fieldsBefore), after: fieldsAfter },
  "Something else happened to a record.",
);

export const EventSchema = unionOf<EventRecord>(
  "Event",
  "type",
  [CreationEvent, ChangeEvent, RemovalEvent],
  "One change: who, when, what and why. What `data` holds follows from `type`.",
);

export const EventPageSchema = Type.Object(
  {
    data: Type.Array(ref(EventSchema), { description: "Events in order." }),
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

/** The components of events, in the order they refer to each other. */
export const EVENT_SCHEMAS = [
  EventType.schema,
  CreationEvent,
  ChangeEvent,
  RemovalEvent,
  EventSchema,
  EventPageSchema,
  EventSummarySchema,
];

/** An event as it is kept: its type is what was written then. */
export type EventRecord = Static<TObject<typeof head>> & {
  readonly type: string;
  readonly data: Readonly<Record<string, unknown>>;
};
export type EventSummary = Static<typeof EventSummarySchema>;
