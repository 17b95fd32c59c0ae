import { CLIENT_VERSION } from "./generated/version.ts";
import type { AnyOptions, Operation, RecordVersion } from "./operation.ts";
import { merged, type Settings } from "./options.ts";

/**
 * The headers of a call, but for a key that a function gives: made once, so that every attempt carries the same Idempotency-Key and
 * request id.
 */
export function headersOf(settings: Settings, operation: Operation, options: AnyOptions): Headers {
  const headers = merged(settings.headers, options.headers);
  headers.set("accept", "application/json, application/problem+json, */*;q=0.1");
  if (!isPage() && !headers.has("user-agent")) headers.set("user-agent", `rimwise-client/${CLIENT_VERSION}`);
  if (typeof settings.key === "string") headers.set("authorization", `Bearer ${settings.key}`);
  if (operation.body !== undefined || operation.data !== undefined)
    headers.set("content-type", operation.contentType ?? "application/json");
  if ((operation.method ?? "GET") !== "GET" && !operation.isQuestion)
    headers.set("idempotency-key", options.idempotencyKey ?? randomHex());
  if (!headers.has("x-request-id")) headers.set("x-request-id", randomHex());
  if (options.reason !== undefined) headers.set("change-reason", encodeURIComponent(options.reason));
  if (options.ifMatch !== undefined) headers.set("if-match", etagOf(options.ifMatch));
  if (options.ifNoneMatch !== undefined) headers.set("if-none-match", etagOf(options.ifNoneMatch));
  return headers;
}

/** Browsers say themselves who they are, and would ask for leave to send another name elsewhere. */
function isPage(): boolean {
  return "document" in globalThis || "WorkerGlobalScope" in globalThis;
}

const ID_BYTES = 16;
const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, "0"));
/** Random bytes that no id has been made of: fetched for many at once, as each fetch takes longer than the rest. */
const pool = new Uint8Array(64 * ID_BYTES);
let used = pool.length;

/** 128 random bits. Not `randomUUID`, which browsers keep from pages served over plain HTTP. */
function randomHex(): string {
  if (used === pool.length) {
    crypto.getRandomValues(pool);
    used = 0;
  }
  used += ID_BYTES;
  let hex = "";
  for (const byte of pool.subarray(used - ID_BYTES, used)) hex += HEX[byte];
  return hex;
}

/** A version as the entity-tag the service gives it; an entity-tag, or `*`, as it is. */
function etagOf(version: RecordVersion): string {
  return /^(?:\*|(?:W\/)?".*")$/.test(String(version)) ? String(version) : `"${version}"`;
}
