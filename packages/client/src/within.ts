import { TimeoutError } from "./errors.ts";

/** What a promise gives, unless it takes too long or the connection is ended first. Too long ends the connection. */
export function within<Value>(ms: number, ending: AbortController, promise: Promise<Value>): Promise<Value> {
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
    if (signal.aborted) end();
    else signal.addEventListener("abort", end, { once: true });
    promise.finally(settle).then(resolve, reject);
  });
}

/** A controller that ends when the caller's signal does; `release` lets the signal go. */
export function endingWith(signal: AbortSignal | undefined) {
  const ending = new AbortController();
  const endByCaller = () => ending.abort(signal?.reason);
  if (signal?.aborted) endByCaller();
  else signal?.addEventListener("abort", endByCaller, { once: true });
  return { ending, release: () => signal?.removeEventListener("abort", endByCaller) };
}
