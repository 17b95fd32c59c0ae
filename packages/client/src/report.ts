import type { Call } from "./call.ts";
import { CallError, type FailedCall } from "./errors.ts";
import { REDACTED, redacted, warningIn } from "./log.ts";
import type { Settings } from "./options.ts";

/** What is known of one attempt when it has ended. */
export type Attempted = {
  readonly call: Call;
  readonly attempt: number;
  readonly started: number;
  /** Of the answer; undefined if none arrived. */
  readonly head: Pick<Response, "status" | "headers"> | undefined;
  readonly error?: unknown;
  readonly retryInMs: number | undefined;
};

/** Reports one attempt to the client's log. */
export function report({ log, key }: Settings, attempted: Attempted): void {
  const { call, attempt, started, head, error, retryInMs } = attempted;
  if (log === undefined) return;
  const status = statusOf(head);
  const warning = head && warningIn(head.headers);
  log({
    method: call.method,
    url: call.url,
    headers: { ...redacted(call.headers), ...(key !== undefined && { authorization: REDACTED }) },
    requestId: requestIdOf(attempted),
    attempt,
    durationMs: performance.now() - started,
    ...(status && { status }),
    ...(error !== undefined && { error }),
    ...(retryInMs !== undefined && { retryInMs }),
    ...(warning && { warning }),
  });
}

/** The same error, with the answer's head and what it takes to ask again. */
export function failureOf(attempted: Attempted): unknown {
  const { error, head, call: sent, attempt } = attempted;
  if (!(error instanceof CallError)) return error;
  const call: FailedCall = {
    method: sent.method,
    path: sent.path,
    attempts: attempt,
    idempotencyKey: sent.headers.get("idempotency-key") ?? undefined,
    requestId: sent.headers.get("x-request-id") ?? undefined,
  };
  return Object.assign(error, { call, status: statusOf(head), headers: head?.headers });
}

/** The answer's own, which something in between may have replaced, or the one that was sent. */
function requestIdOf({ head, call }: Attempted): string | undefined {
  return head?.headers.get("x-request-id") ?? call.headers.get("x-request-id") ?? undefined;
}

/** Undefined for an answer that a page may not look into. */
function statusOf(head: Attempted["head"]): number | undefined {
  return head?.status || undefined;
}
