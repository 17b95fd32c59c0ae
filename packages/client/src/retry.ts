import { ApiError, ConnectionError, TimeoutError } from "./errors.ts";

const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 8000;
/** If asked to wait longer than this, the error is thrown instead. */
const LONGEST_ASKED_MS = 60_000;

/**
 * How long to wait before the next attempt, ms; undefined if another attempt would not help or not be in time. What the
 * service asks for (`Retry-After`) up to 60 s, else 0.5 s doubling up to 8 s, less up to half of it at random.
 */
export function retryWaitMs(error: unknown, attemptsMade: number, leftMs: number): number | undefined {
  if (!isPassing(error)) return undefined;
  const asked = error instanceof ApiError ? error.retryAfterMs : undefined;
  if (asked !== undefined && asked > LONGEST_ASKED_MS) return undefined;
  const doubled = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (attemptsMade - 1));
  const waitMs = asked ?? doubled * (1 - Math.random() / 2);
  return waitMs < leftMs ? waitMs : undefined;
}

/** Waits, unless the signal ends it first; then rejects with the signal's reason. */
export function wait(ms: number, signal: AbortSignal | undefined): Promise<void> {
  return new Promise((resolve, reject) => {
    const end = () => {
      clearTimeout(timer);
      reject(signal?.reason);
    };
    const timer = setTimeout(() => {
      signal?.removeEventListener("abort", end);
      resolve();
    }, ms);
    if (signal?.aborted) end();
    else signal?.addEventListener("abort", end, { once: true });
  });
}

function isPassing(error: unknown): boolean {
  if (error instanceof ConnectionError) return error.code !== "redirected";
  if (error instanceof TimeoutError) return true;
  if (!(error instanceof ApiError)) return false;
  const { status } = error;
  return status === 408 || status === 429 || status >= 500 || isStillRunning(error);
}

/** Whether an earlier attempt is still being done: asking for its answer is no further attempt. */
export function isStillRunning(error: unknown): boolean {
  return error instanceof ApiError && error.code === "idempotency-in-progress";
}
