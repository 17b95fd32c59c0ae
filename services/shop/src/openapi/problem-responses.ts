import { EVERY_ANSWER, type Header, header, REPLAYED, type ResponseObject } from "./responses.ts";

/** The problems an operation may answer with, by status: the name of the component and what it means. */
export const PROBLEM_RESPONSES = {
  "400": { name: "MalformedRequest", description: "The request cannot be read." },
  "401": { name: "KeyNeeded", description: "The key is missing or not valid." },
  "403": { name: "ScopeMissing", description: "The key's role may not do this." },
  "404": { name: "NotFound", description: "There is nothing here." },
  "408": { name: "RequestTooSlow", description: "The body did not arrive in time." },
  "409": { name: "Conflict", description: "This cannot be done as things are; `code` says why." },
  "412": {
    name: "VersionStale",
    description: "The record has changed since; the current ETag is in the header.",
  },
  "413": {
    name: "BodyTooLarge",
    description: "The body is too large: more than 256 KiB, or what the operation says.",
  },
  "414": { name: "PathTooLong", description: "A part of the path is too long." },
  "415": { name: "MediaTypeNotSupported", description: "The body is of a type that is not taken here." },
  "417": { name: "ExpectationFailed", description: "Something else than 100-continue is expected." },
  "422": {
    name: "NotValid",
    description: "Some input cannot be accepted; `errors` names each field. Nothing was changed.",
  },
  "428": { name: "VersionRequired", description: "If-Match is missing." },
  "429": { name: "TooManyRequests", description: "Wait as Retry-After says." },
  "431": { name: "HeadersTooLarge", description: "The path, query and headers are too large together." },
  "500": { name: "InternalProblem", description: "Something went wrong inside the service." },
  "503": { name: "NotAvailable", description: "Too busy, or shutting down; try again as Retry-After says." },
  "507": { name: "DiskFull", description: "The disk of the service's machine is full. Nothing was changed." },
} as const;

const RETRY_AFTER = header("Seconds to wait before asking again.");

/** What problems of a status say in headers beside those of every answer. */
const OWN_HEADERS: Readonly<Record<string, Record<string, Header>>> = {
  "401": { "WWW-Authenticate": header("How to show a key: `Bearer`.") },
  "404": { "Idempotent-Replayed": REPLAYED },
  "409": { "Retry-After": header("Seconds to wait, if waiting helps."), "Idempotent-Replayed": REPLAYED },
  "412": { ETag: header("The version as it is now.") },
  "429": { "Retry-After": RETRY_AFTER },
  "503": { "Retry-After": RETRY_AFTER },
};

/** The components those responses are. */
export function problemComponents(): Record<string, ResponseObject> {
  const schema = { $ref: "#/components/schemas/Problem" };
  return Object.fromEntries(
    Object.entries(PROBLEM_RESPONSES).map(([status, { name, description }]) => [
      name,
      {
        description,
        headers: { ...EVERY_ANSWER, ...OWN_HEADERS[status] },
        content: { "application/problem+json": { schema } },
      },
    ]),
  );
}
