import { answerOf, type Delivered } from "./answer.ts";
import { attempt } from "./attempt.ts";
import { isBytes } from "./bytes.ts";
import { attemptOf, callOf, isStream } from "./call.ts";
import { follow } from "./follow.ts";
import type { AnyOptions, Caller, Operation } from "./operation.ts";
import type { Settings } from "./options.ts";
import { type Page, pagesOf } from "./pages.ts";
import { readAnswer } from "./read.ts";
import { type Attempted, failureOf, report } from "./report.ts";
import { isStillRunning, retryWaitMs, wait } from "./retry.ts";

type Outcome<Result> =
  | { readonly kind: "delivered"; readonly delivered: Delivered<Result> }
  | { readonly kind: "failed"; readonly error: unknown };

/** The core under the generated methods: sends, retries and reads. */
export function createCaller(settings: Settings): Caller {
  return {
    send: (operation, options = {}) => answerOf(deliver(settings, operation, options)),
    list: <Item>(operation: Operation, options: AnyOptions = {}, cursorParameter = "cursor") =>
      pagesOf((cursor) => {
        const query = { ...operation.query, ...(cursor !== undefined && { [cursorParameter]: cursor }) };
        return deliver<Page<Item>>(settings, { ...operation, query }, options);
      }),
    follow: (operation, options = {}) => follow(settings, operation, options),
  };
}

async function deliver<Result>(
  settings: Settings,
  operation: Operation,
  options: AnyOptions,
): Promise<Delivered<Result>> {
  const {
    signal,
    timeoutMs = settings.timeoutMs,
    deadlineMs = settings.deadlineMs,
    retries = settings.retries,
  } = options;
  const call = callOf(settings, operation, options);
  const { fetch, key } = settings;
  const request = (ending: AbortSignal) => attemptOf(call, key, ending);
  const as = options.asStream ? "stream" : operation.answers?.some(isBytes) ? "blob" : "text";
  const deadline = performance.now() + deadlineMs;
  let attempts = 0;
  let failures = 0;
  for (;;) {
    attempts += 1;
    const started = performance.now();
    let head: Attempted["head"];
    const heard = (answered: Attempted["head"]) => {
      head = answered;
    };
    const left = Math.min(timeoutMs, deadline - started);
    const outcome = await attempt({ fetch, url: call.url, request, timeoutMs: left, signal, as, heard })
      .then((answer) => readAnswer<Result>(answer, call.answers, options.ifNoneMatch !== undefined))
      .then(
        (delivered): Outcome<Result> => ({ kind: "delivered", delivered }),
        (error: unknown): Outcome<Result> => ({ kind: "failed", error }),
      );
    if (outcome.kind === "failed" && !(failures > 0 && isStillRunning(outcome.error))) failures += 1;
    const retryInMs =
      outcome.kind === "failed" && failures <= retries && !isStream(call.body)
        ? retryWaitMs(outcome.error, failures, deadline - performance.now())
        : undefined;
    const error = outcome.kind === "failed" ? outcome.error : undefined;
    const attempted: Attempted = { call, attempt: attempts, started, head, error, retryInMs };
    report(settings, attempted);
    if (outcome.kind === "delivered") return outcome.delivered;
    if (retryInMs === undefined) throw failureOf(attempted);
    await wait(retryInMs, signal);
  }
}
