import { headersOf } from "./headers.ts";
import type { AnyOptions, Operation } from "./operation.ts";
import type { Settings } from "./options.ts";
import { urlOf } from "./url.ts";

/** What is sent, the same on every attempt. */
export type Call = {
  readonly method: string;
  readonly url: string;
  readonly headers: Headers;
  /** Media types of its answer. */
  readonly answers: Operation["answers"];
  readonly body: string | Blob | ReadableStream<Uint8Array> | null;
};

/** A call made ready to be sent. Throws a TypeError for a path parameter that would name another path. */
export function callOf(settings: Settings, operation: Operation, options: AnyOptions): Call {
  return {
    method: operation.method,
    url: urlOf(settings.baseUrl, operation),
    headers: headersOf(settings, operation, options),
    answers: operation.answers,
    body: operation.data ?? (operation.body === undefined ? null : JSON.stringify(operation.body)),
  };
}

/** A fresh Request of a call. The key must not follow a redirect to somewhere else, nor cookies come along. */
export function requestOf({ url, method, headers, body }: Call, signal: AbortSignal): Request {
  // A stream must be said to be sent before the answer is read.
  const streaming = isStream(body) && { duplex: "half" };
  return new Request(url, {
    redirect: "manual",
    credentials: "omit",
    method,
    headers,
    body,
    signal,
    ...streaming,
  });
}

/** Whether a body can be sent once only. */
export function isStream(body: Call["body"]): boolean {
  return body instanceof ReadableStream;
}
