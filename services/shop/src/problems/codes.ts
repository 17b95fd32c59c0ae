/** Every problem this service can answer with. Codes are stable: programs branch on them. */
export const PROBLEMS = {
  "malformed-request": { status: 400, title: "The request cannot be read." },
  "not-json": { status: 400, title: "The body is not JSON that can be accepted." },
  "key-missing": { status: 401, title: "A key is needed." },
  "key-not-valid": { status: 401, title: "The key is not valid." },
  "scope-missing": { status: 403, title: "This key's role may not do this." },
  "person-needed": { status: 403, title: "This needs the key of a person." },
  "not-yours": { status: 403, title: "A member may do this in their own name only." },
  "not-found": { status: 404, title: "There is nothing here." },
  "method-not-allowed": { status: 405, title: "This cannot be done to this resource." },
  "request-too-slow": { status: 408, title: "The request did not arrive in time." },
  "idempotency-in-progress": { status: 409, title: "The first request with this key is still running." },
  "changed-meanwhile": { status: 409, title: "Something this rests on has changed meanwhile." },
  "secret-shown-once": { status: 409, title: "The key was created, and its secret has been shown." },
  "last-manager": { status: 409, title: "The last manager's key cannot be revoked." },
  "key-ended": { status: 409, title: "The key has ended." },
  "person-left": { status: 409, title: "This person has left." },
  "too-many-photographs": { status: 409, title: "The bit has enough photographs." },
  "place-in-use": { status: 409, title: "Something is still kept there." },
  "bit-not-available": { status: 409, title: "The bit cannot be taken just now." },
  "bit-not-usable": { status: 409, title: "The bit is out of use." },
  "bit-on-loan": { status: 409, title: "The bit is on loan." },
  "loan-ended": { status: 409, title: "The bit is back already." },
  "state-not-fitting": { status: 409, title: "This does not fit the bit's state." },
  "imported-before": { status: 409, title: "This file has made its bits before." },
  "import-running": { status: 409, title: "Another import is running." },
  "ground-moved": { status: 409, title: "What this rests on has changed." },
  "may-not-run": { status: 409, title: "This must not be run." },
  "second-person-needed": { status: 409, title: "This takes a second person." },
  "course-over": { status: 409, title: "The course is over." },
  "enrolled-already": { status: 409, title: "They take part already." },
  "version-stale": { status: 412, title: "The record has changed since it was read." },
  "body-too-large": { status: 413, title: "The body is too large." },
  "path-too-long": { status: 414, title: "The path is too long." },
  "media-type-not-supported": { status: 415, title: "The body is not of an accepted type." },
  "not-valid": { status: 422, title: "Some of the input cannot be accepted." },
  "import-not-valid": { status: 422, title: "Some rows of the file cannot be accepted." },
  "idempotency-key-reused": { status: 422, title: "This Idempotency-Key came with another body before." },
  "version-required": { status: 428, title: "Say which version to change." },
  "too-many-requests": { status: 429, title: "Too many requests." },
  "headers-too-large": { status: 431, title: "The headers are too large." },
  internal: { status: 500, title: "Something went wrong inside the service." },
  busy: { status: 503, title: "The service is too busy just now." },
  "took-too-long": { status: 503, title: "The answer took too long." },
  closing: { status: 503, title: "The service is shutting down." },
} as const;

export type ProblemCode = keyof typeof PROBLEMS;

/** The stable `type` of a problem. */
export function problemType(code: ProblemCode): string {
  return `urn:rimwise:problem:${code}`;
}
