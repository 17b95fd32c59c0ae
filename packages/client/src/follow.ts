import { refuseRedirect } from "./attempt.ts";
import { type Call, callOf, requestOf } from "./call.ts";
import { apiErrorFor, CallError, ConnectionError, TimeoutError } from "./errors.ts";
import { messagesIn } from "./event-stream.ts";
import { redacted } from "./log.ts";
import type { CallOptions, Operation } from "./operation.ts";
import type { Fetch, Settings } from "./options.ts";
import { readAnswer } from "./read.ts";
import { retryWaitMs, wait } from "./retry.ts";

/** The service says something every 15 s; after three times that, nobody is there any more. */
const SILENCE_MS = 45_000;

/**
 * What a stream of server-sent events holds, each as it comes. A connection that breaks or falls silent is made again, and goes
 * on after the last event: without end, or until `retries` in a row have failed. Throws an ApiError that would not pass,
 * and the signal's own reason. Whoever stops iterating closes the connection.
 */
export async function* follow<Item>(
  settings: Settings,
  operation: Operation,
  options: CallOptions,
): AsyncGenerator<Item, void, undefined> {
  const { signal, retries = Number.POSITIVE_INFINITY, timeoutMs = settings.timeoutMs } = options;
  const call = callOf(settings, operation, options);
  call.headers.set("accept", "text/event-stream, application/problem+json");
  for (let attempt = 1; ; attempt += 1) {
    const started = performance.now();
    const ending = new AbortController();
    const endByCaller = () => ending.abort(signal?.reason);
    signal?.addEventListener("abort", endByCaller, { once: true });
    if (signal?.aborted) endByCaller();
    let error: unknown = new ConnectionError("The stream ended");
    try {
      for await (const { id, data } of messagesIn(textOf(settings.fetch, call, timeoutMs, ending))) {
        ending.signal.throwIfAborted();
        const item: Item = JSON.parse(data);
        attempt = 1;
        if (id !== "") call.headers.set("last-event-id", id);
        yield item;
      }
    } catch (cause) {
      error = errorOf(cause, ending.signal);
    } finally {
      signal?.removeEventListener("abort", endByCaller);
      ending.abort();
    }
    const waitMs = attempt <= retries ? retryWaitMs(error, attempt, Number.POSITIVE_INFINITY) : undefined;
    settings.log({
      method: call.method,
      url: call.url,
      headers: redacted(call.headers),
      attempt,
      durationMs: performance.now() - started,
      error,
      ...(waitMs !== undefined && { retryInMs: waitMs }),
    });
    if (waitMs === undefined) throw error;
    await wait(waitMs, signal);
  }
}

/** The text of an answer that is a stream, as it arrives. Throws what `readAnswer` does if it is none. */
async function* textOf(
  fetch: Fetch,
  call: Call,
  timeoutMs: number,
  ending: AbortController,
): AsyncGenerator<string, void, undefined> {
  ending.signal.throwIfAborted();
  const response = await within(timeoutMs, ending, fetch(requestOf(call, ending.signal)));
  refuseRedirect(response);
  const { status, headers, body } = response;
  if (!response.ok || body === null || !/^text\/event-stream\b/.test(headers.get("content-type") ?? "")) {
    readAnswer({ status, headers, text: await within(timeoutMs, ending, response.text()) });
    // Something in between answered: asking it again would go on for ever.
    throw apiErrorFor({ status, headers, problem: undefined });
  }
  const reader = body.getReader();
  const decoder = new TextDecoder();
  for (;;) {
    const { done, value } = await within(SILENCE_MS, ending, reader.read());
    if (done) return;
    yield decoder.decode(value, { stream: true });
  }
}

/** What a promise gives, unless it takes too long or the connection is ended first. */
function within<Value>(ms: number, ending: AbortController, promise: Promise<Value>): Promise<Value> {
  const { signal } = ending;
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => ending.abort(new TimeoutError(ms)), ms);
    const settle = () => {
      clearTimeout(timer);
      signal.removeEventListener("abort", end);
    };
    const end = () => {
      settle();
      reject(signal.reason);
    };
    signal.addEventListener("abort", end, { once: true });
    promise.finally(settle).then(resolve, reject);
  });
}

function errorOf(cause: unknown, { aborted, reason }: AbortSignal): unknown {
  if (aborted) return reason;
  return cause instanceof CallError ? cause : new ConnectionError("The stream broke", { cause });
}
