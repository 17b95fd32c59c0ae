import { answerOf, type Delivered } from "./answer.ts";
import { attempt } from "./attempt.ts";
import { headersOf } from "./headers.ts";
import { redacted } from "./log.ts";
import type { AnyOptions, Caller, Operation } from "./operation.ts";
import type { Settings } from "./options.ts";
import { type Page, pagesOf } from "./pages.ts";
import { readAnswer } from "./read.ts";
import { retryWaitMs, wait } from "./retry.ts";
import { urlOf } from "./url.ts";

/** What is sent, the same on every attempt. */
type Call = {
  readonly method: string;
  readonly url: string;
  readonly headers: Headers;
  readonly body: string | null;
};

type Outcome<Result> =
  | { readonly kind: "delivered"; readonly delivered: Delivered<Result> }
  | { readonly kind: "failed"; readonly error: unknown };

/** The core under the generated methods: sends, retries and reads. */
export function createCaller(settings: Settings): Caller {
  return {
    send: (operation, options = {}) => answerOf(deliver(settings, operation, options)),
    list: <Item>(operation: Operation, cursorParameter: string, options: AnyOptions = {}) =>
      pagesOf(async (cursor) => {
        const query = { ...operation.query, ...(cursor !== undefined && { [cursorParameter]: cursor }) };
        const { data } = await deliver<Page<Item>>(settings, { ...operation, query }, options);
        return data;
      }),
  };
}

async function deliver<Result>(
  settings: Settings,
  operation: Operation,
  options: AnyOptions,
): Promise<Delivered<Result>> {
  const { signal, timeoutMs, deadlineMs, retries } = { ...settings, ...options };
  const call = prepare(settings, operation, options);
  const deadline = performance.now() + deadlineMs;
  for (let attemptsMade = 1; ; attemptsMade += 1) {
    const started = performance.now();
    const outcome = await tryOnce<Result>(settings, call, Math.min(timeoutMs, deadline - started), signal);
    const waitMs =
      outcome.kind === "failed" && attemptsMade <= retries
        ? retryWaitMs(outcome.error, attemptsMade, deadline - performance.now())
        : undefined;
    settings.log({
      method: call.method,
      url: call.url,
      headers: redacted(call.headers),
      attempt: attemptsMade,
      durationMs: performance.now() - started,
      ...(outcome.kind === "failed"
        ? { error: outcome.error }
        : { status: outcome.delivered.response.status }),
      ...(waitMs !== undefined && { retryInMs: waitMs }),
    });
    if (outcome.kind === "delivered") return outcome.delivered;
    if (waitMs === undefined) throw outcome.error;
    await wait(waitMs, signal);
  }
}

function prepare(settings: Settings, operation: Operation, options: AnyOptions): Call {
  return {
    method: operation.method,
    url: urlOf(settings.baseUrl, operation),
    headers: headersOf(settings, operation, options),
    body: operation.body === undefined ? null : JSON.stringify(operation.body),
  };
}

async function tryOnce<Result>(
  { fetch }: Settings,
  call: Call,
  timeoutMs: number,
  signal: AbortSignal | undefined,
): Promise<Outcome<Result>> {
  const { url, method, headers, body } = call;
  // The key must not follow a redirect to somewhere else, nor cookies come along.
  const fixed = { redirect: "error", credentials: "omit" } as const;
  const request = (ending: AbortSignal) =>
    new Request(url, { ...fixed, method, headers, body, signal: ending });
  try {
    const answer = await attempt({ fetch, request, timeoutMs, signal });
    return { kind: "delivered", delivered: readAnswer<Result>(answer) };
  } catch (error) {
    return { kind: "failed", error };
  }
}
