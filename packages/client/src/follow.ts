import { refuseRedirect } from "./attempt.ts";
import { attemptOf, type Call, callOf } from "./call.ts";
import { apiErrorFor, CallError, ConnectionError } from "./errors.ts";
import { messagesIn } from "./event-stream.ts";
import type { CallOptions, Operation } from "./operation.ts";
import type { Settings } from "./options.ts";
import { readAnswer } from "./read.ts";
import { type Attempted, failureOf, report } from "./report.ts";
import { retryWaitMs, wait } from "./retry.ts";
import { endingWith, within } from "./within.ts";

/** The service says something every 15 s; after three times that, nobody is there any more. */
const SILENCE_MS = 45_000;

/**
 * What a stream of server-sent events holds, each as it comes. A connection that breaks or falls silent is made again, and goes
 * on after the last event: without end, or until `retries` in a row have failed. One that never came about is given up after as many
 * retries as every other call. Throws an ApiError that would not pass, and the signal's own reason. Whoever stops iterating closes the
 * connection.
 */
export async function* follow<Item>(
  settings: Settings,
  operation: Operation,
  options: CallOptions,
): AsyncGenerator<Item, void, undefined> {
  const { signal, timeoutMs = settings.timeoutMs } = options;
  let retries = options.retries ?? settings.retries;
  const call = callOf(settings, operation, options);
  call.headers.set("accept", "text/event-stream, application/problem+json");
  for (let attempt = 1; ; attempt += 1) {
    const started = performance.now();
    const { ending, release } = endingWith(signal);
    let head: Attempted["head"];
    const heard = (answered: Attempted["head"]) => {
      head = answered;
    };
    const connected = () => {
      retries = options.retries ?? Number.POSITIVE_INFINITY;
    };
    let error: unknown = new ConnectionError("The stream ended");
    try {
      const text = textOf({ settings, call, timeoutMs, ending, heard, connected });
      for await (const { id, data } of messagesIn(text)) {
        ending.signal.throwIfAborted();
        const item: Item = JSON.parse(data);
        attempt = 1;
        if (id !== "") call.headers.set("last-event-id", id);
        yield item;
      }
    } catch (cause) {
      error = errorOf(cause, ending.signal);
    } finally {
      release();
      ending.abort();
    }
    const retryInMs = attempt <= retries ? retryWaitMs(error, attempt, Number.POSITIVE_INFINITY) : undefined;
    const attempted: Attempted = { call, attempt, started, head, error, retryInMs };
    report(settings, attempted);
    if (retryInMs === undefined) throw failureOf(attempted);
    await wait(retryInMs, signal);
  }
}

type Connection = {
  readonly settings: Settings;
  readonly call: Call;
  readonly timeoutMs: number;
  readonly ending: AbortController;
  readonly heard: (head: Attempted["head"]) => void;
  readonly connected: () => void;
};

/** The text of an answer that is a stream, as it arrives. Throws what `readAnswer` does if it is none. */
async function* textOf(connection: Connection): AsyncGenerator<string, void, undefined> {
  const { settings, call, timeoutMs, ending, heard, connected } = connection;
  const { fetch, key } = settings;
  ending.signal.throwIfAborted();
  const sent = await within(timeoutMs, ending, attemptOf(call, key, ending.signal));
  const response = await within(timeoutMs, ending, fetch(call.url, sent));
  heard(response);
  refuseRedirect(response);
  const { status, headers, body } = response;
  if (!response.ok || body === null || !/^text\/event-stream\b/.test(headers.get("content-type") ?? "")) {
    readAnswer({ status, headers, content: await within(timeoutMs, ending, response.text()) });
    // Something in between answered: asking it again would go on for ever.
    throw apiErrorFor({ status, headers, problem: undefined });
  }
  connected();
  const reader = body.getReader();
  const decoder = new TextDecoder();
  for (;;) {
    const { done, value } = await within(SILENCE_MS, ending, reader.read());
    if (done) return;
    yield decoder.decode(value, { stream: true });
  }
}

function errorOf(cause: unknown, { aborted, reason }: AbortSignal): unknown {
  if (aborted) return reason;
  return cause instanceof CallError ? cause : new ConnectionError("The stream broke", { cause });
}
