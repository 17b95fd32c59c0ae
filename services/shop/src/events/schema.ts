import Type, { type Static } from "typebox";
import { ref } from "../http/reference.ts";

const SHA256_HEX = "^[0-9a-f]{64}$";

export const EventSchema = Type.Object(
  {
    sequence: Type.Integer({ minimum: 1, description: "Its place in the order of things, without gaps." }),
    at: Type.String({ format: "date-time", description: "When it happened, UTC." }),
    by: Type.String({ description: "Id of the key that did it, or `system`." }),
    requestId: Type.String({ description: "The request that did it." }),
    type: Type.String({ description: "What happened, such as `bit.changed`." }),
    subjectId: Type.String({ description: "Id of the record it happened to." }),
    subjectVersion: Type.Integer({
      minimum: 1,
      description: "Version of the record after it; before it on a removal.",
    }),
    data: Type.Unsafe<Record<string, unknown>>({
      type: "object",
      additionalProperties: true,
      description: "What changed: fields `before` and `after`.",
    }),
    previousHash: Type.String({
      pattern: SHA256_HEX,
      description: "Hash of the event before; zeros on the first.",
    }),
    hash: Type.String({
      pattern: SHA256_HEX,
      description: "SHA-256 of this event without `hash`, in canonical JSON (RFC 8785).",
    }),
  },
  { $id: "Event", description: "One change: who, when and what.", additionalProperties: false },
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

export type EventRecord = Static<typeof EventSchema>;
