import { ConnectionError, TimeoutError } from "./errors.ts";
import type { Fetch } from "./options.ts";

export type AttemptInput = {
  readonly fetch: Fetch;
  /** Makes a fresh Request: one that has been sent cannot be sent again. */
  readonly request: (signal: AbortSignal) => Request;
  readonly timeoutMs: number;
  readonly signal: AbortSignal | undefined;
};

/** An answer that arrived whole. */
export type WholeAnswer = { readonly status: number; readonly headers: Headers; readonly text: string };

/**
 * Sends one Request and reads its whole answer. Rejects with a TimeoutError when that takes too long, with the
 * caller's own reason when the caller ends it, and with a ConnectionError for everything else.
 */
export async function attempt({ fetch, request, timeoutMs, signal }: AttemptInput): Promise<WholeAnswer> {
  signal?.throwIfAborted();
  const ending = new AbortController();
  const endByCaller = () => ending.abort(signal?.reason);
  const timer = setTimeout(() => ending.abort(new TimeoutError(timeoutMs)), timeoutMs);
  signal?.addEventListener("abort", endByCaller, { once: true });
  const sent = request(ending.signal);
  try {
    // Raced, because a fetch may not heed its signal, or not while the body arrives.
    return await Promise.race([exchange(fetch, sent), rejectionOf(ending.signal)]);
  } catch (cause) {
    if (ending.signal.aborted) throw ending.signal.reason;
    if (cause instanceof ConnectionError) throw cause;
    throw new ConnectionError(`No whole answer from ${new URL(sent.url).origin}`, { cause });
  } finally {
    clearTimeout(timer);
    signal?.removeEventListener("abort", endByCaller);
  }
}

async function exchange(fetch: Fetch, request: Request): Promise<WholeAnswer> {
  const response = await fetch(request);
  refuseRedirect(response);
  return { status: response.status, headers: response.headers, text: await response.text() };
}

/** Throws for a redirect: the key must not follow it. Pages do not see where it leads. */
export function refuseRedirect({ status, type, headers }: Response): void {
  const isRedirect = type === "opaqueredirect" || (status >= 300 && status < 400 && status !== 304);
  if (!isRedirect) return;
  const place = headers.get("location");
  const message = `The service redirects${place === null ? "" : ` to ${place}`}: set baseUrl to where it is`;
  throw new ConnectionError(message, { code: "redirected" });
}

function rejectionOf(signal: AbortSignal): Promise<never> {
  return new Promise((_resolve, reject) => {
    signal.addEventListener("abort", () => reject(signal.reason), { once: true });
  });
}
