import { headersOf } from "./headers.ts";
import type { AnyOptions, FileBody, Operation } from "./operation.ts";
import { requireKey, type Settings } from "./options.ts";
import { urlOf } from "./url.ts";

/** What is sent, the same on every attempt. */
export type Call = {
  readonly method: string;
  readonly url: string;
  /** All but the key. */
  readonly headers: Headers;
  /** Media types of its answer. */
  readonly answers: Operation["answers"];
  readonly body: FileBody<string>["data"] | null;
};

/**
 * A call made ready to be sent. Throws a TypeError for a path parameter that would name another path, and for a stream that
 * somebody reads.
 */
export function callOf(settings: Settings, operation: Operation, options: AnyOptions): Call {
  const { method, data, body, answers } = operation;
  if (data instanceof ReadableStream && data.locked)
    throw new TypeError("The stream is being read already: give one that nobody reads.");
  return {
    method,
    url: urlOf(settings.baseUrl, operation),
    headers: headersOf(settings, operation, options),
    answers,
    body: data ?? (body === undefined ? null : JSON.stringify(body)),
  };
}

/** A fresh Request of a call. The key must not follow a redirect to somewhere else, nor cookies come along. */
export async function requestOf(call: Call, key: Settings["key"], signal: AbortSignal): Promise<Request> {
  const { url, method, headers, body } = call;
  const bearer = typeof key === "function" ? requireKey(await key()) : key;
  // A stream must be said to be sent before the answer is read.
  const streaming = isStream(body) && { duplex: "half" };
  const request = new Request(url, {
    redirect: "manual",
    credentials: "omit",
    method,
    headers,
    body,
    signal,
    ...streaming,
  });
  if (bearer !== undefined) request.headers.set("authorization", `Bearer ${bearer}`);
  return request;
}

/** Whether a body can be sent once only. */
export function isStream(body: Call["body"]): boolean {
  return body instanceof ReadableStream;
}
