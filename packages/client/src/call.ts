import { headersOf } from "./headers.ts";
import type { AnyOptions, FileBody, Operation } from "./operation.ts";
import { requireKey, type Settings } from "./options.ts";
import { pathOf, searchIn } from "./url.ts";

/** What is sent, the same on every attempt. */
export type Call = {
  readonly method: string;
  /** With its parameters in place. */
  readonly path: string;
  readonly url: string;
  /** All but a key that a function gives. */
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
  const { method = "GET", data, body, answers } = operation;
  if (data instanceof ReadableStream) requireFresh(data);
  const path = pathOf(operation);
  return {
    method,
    path,
    url: settings.baseUrl + path + searchIn(options.query ?? operation.query),
    headers: headersOf(settings, operation, options),
    answers,
    body: data ?? (body === undefined ? null : JSON.stringify(body)),
  };
}

function requireFresh(stream: ReadableStream): void {
  try {
    // No answer takes a stream that has been read, or is: there is no other way to ask.
    new Response(stream);
  } catch (cause) {
    throw new TypeError("The stream is read already: give a fresh one.", { cause });
  }
}

/** What is sent in one attempt. The key must not follow a redirect to somewhere else, nor cookies come along. */
export async function attemptOf(call: Call, key: Settings["key"], signal: AbortSignal): Promise<RequestInit> {
  const { method, body } = call;
  // A stream must be said to be sent before the answer is read.
  const streaming = isStream(body) && { duplex: "half" };
  const headers = typeof key === "function" ? withKey(call.headers, await key()) : call.headers;
  return { redirect: "manual", credentials: "omit", method, headers, body, signal, ...streaming };
}

function withKey(headers: Headers, key: string): Headers {
  const all = new Headers(headers);
  all.set("authorization", `Bearer ${requireKey(key)}`);
  return all;
}

/** Whether a body can be sent once only. */
export function isStream(body: Call["body"]): boolean {
  return body instanceof ReadableStream;
}
