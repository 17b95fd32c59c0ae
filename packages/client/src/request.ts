import { answerOf, type Delivered } from "./answer.ts";
import { attempt } from "./attempt.ts";
import { type Call, callOf, isStream, requestOf } from "./call.ts";
import { CallError, type FailedCall } from "./errors.ts";
import { follow } from "./follow.ts";
import { redacted } from "./log.ts";
import type { AnyOptions, Caller, Operation } from "./operation.ts";
import type { Settings } from "./options.ts";
import { type Page, pagesOf } from "./pages.ts";
import { readAnswer } from "./read.ts";
import { isStillRunning, retryWaitMs, wait } from "./retry.ts";

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
    follow: (operation, options = {}) => follow(settings, operation, options),
  };
}

async function deliver<Result>(
  settings: Settings,
  operation: Operation,
  options: AnyOptions,
): Promise<Delivered<Result>> {
  const { signal, timeoutMs, deadlineMs, retries } = { ...settings, ...options };
  const call = callOf(settings, operation, options);
  const deadline = performance.now() + deadlineMs;
  let attempts = 0;
  let failures = 0;
  for (;;) {
    attempts += 1;
    const started = performance.now();
    const outcome = await tryOnce<Result>(settings, call, Math.min(timeoutMs, deadline - started), signal);
    if (outcome.kind === "failed" && !(failures > 0 && isStillRunning(outcome.error))) failures += 1;
    const waitMs =
      outcome.kind === "failed" && failures <= retries && !isStream(call.body)
        ? retryWaitMs(outcome.error, failures, deadline - performance.now())
        : undefined;
    settings.log({
      method: call.method,
      url: call.url,
      headers: redacted(call.headers),
      attempt: attempts,
      durationMs: performance.now() - started,
      ...(outcome.kind === "failed"
        ? { error: outcome.error }
        : { status: outcome.delivered.response.status }),
      ...(waitMs !== undefined && { retryInMs: waitMs }),
    });
    if (outcome.kind === "delivered") return outcome.delivered;
    if (waitMs === undefined) throw withCall(outcome.error, operation.path, call, attempts);
    await wait(waitMs, signal);
  }
}

/** The same error, with what it takes to ask again. */
function withCall(error: unknown, path: string, { method, headers }: Call, attempts: number): unknown {
  if (!(error instanceof CallError)) return error;
  const idempotencyKey = headers.get("idempotency-key") ?? undefined;
  const requestId = headers.get("x-request-id") ?? undefined;
  const call: FailedCall = { method, path, attempts, idempotencyKey, requestId };
  return Object.assign(error, { call });
}

async function tryOnce<Result>(
  { fetch }: Settings,
  call: Call,
  timeoutMs: number,
  signal: AbortSignal | undefined,
): Promise<Outcome<Result>> {
  const request = (ending: AbortSignal) => requestOf(call, ending);
  try {
    const answer = await attempt({ fetch, request, timeoutMs, signal });
    return { kind: "delivered", delivered: readAnswer<Result>(answer, call.answers) };
  } catch (error) {
    return { kind: "failed", error };
  }
}
