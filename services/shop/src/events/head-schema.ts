import Type from "typebox";

const SHA256_HEX = "^[0-9a-f]{64}$";

/** SHA-256 in hex. */
export function hashField(description: string) {
  return Type.String({ pattern: SHA256_HEX, description });
}

/** What every event says beside what happened. */
export const EVENT_HEAD = {
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
