import type { AnyOptions, Operation, Version } from "./operation.ts";
import type { Settings } from "./options.ts";

/** The headers of a call: made once, so that every attempt carries the same Idempotency-Key and request id. */
export function headersOf(settings: Settings, operation: Operation, options: AnyOptions): Headers {
  const headers = new Headers(options.headers);
  headers.set("accept", "application/json, application/problem+json, */*;q=0.1");
  if (settings.key !== undefined) headers.set("authorization", `Bearer ${settings.key}`);
  if (operation.body !== undefined || operation.data !== undefined)
    headers.set("content-type", operation.contentType ?? "application/json");
  if (operation.isWrite) headers.set("idempotency-key", options.idempotencyKey ?? randomHex());
  if (!headers.has("x-request-id")) headers.set("x-request-id", randomHex());
  if (options.reason !== undefined) headers.set("change-reason", encodeURIComponent(options.reason));
  if (options.ifMatch !== undefined) headers.set("if-match", etagOf(options.ifMatch));
  return headers;
}

/** 128 random bits. Not `randomUUID`, which browsers keep from pages served over plain HTTP. */
function randomHex(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** A version as the entity-tag the service gives it; an entity-tag, or `*`, as it is. */
function etagOf(version: Version): string {
  return /^(?:\*|(?:W\/)?".*")$/.test(String(version)) ? String(version) : `"${version}"`;
}
