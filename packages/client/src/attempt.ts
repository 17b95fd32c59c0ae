import { bodyOf } from "./body-stream.ts";
import { ConnectionError } from "./errors.ts";
import type { Send } from "./options.ts";
import { endingWith, within } from "./within.ts";

export type AttemptInput = {
  readonly fetch: Send;
  readonly url: string;
  /** What to send, asked for at each attempt. */
  readonly request: (signal: AbortSignal) => Promise<RequestInit>;
  readonly timeoutMs: number;
  readonly signal: AbortSignal | undefined;
  /** What to make of the body of a success: a stream is given before the body has arrived. */
  readonly as: "text" | "blob" | "stream";
  /** Called as soon as there is an answer, whatever becomes of it. */
  readonly heard: (head: Pick<Response, "status" | "headers">) => void;
};

/** An answer that arrived whole, or whose body is still arriving. */
export type ReadableAnswer = {
  readonly status: number;
  readonly headers: Headers;
  readonly content: string | Blob | ReadableStream<Uint8Array>;
};

/**
 * Sends one request and reads its whole answer. Rejects with a TimeoutError when that takes too long, with the
 * caller's own reason when the caller ends it, with what `request` throws, and with a ConnectionError for everything else.
 */
export async function attempt(input: AttemptInput): Promise<ReadableAnswer> {
  input.signal?.throwIfAborted();
  const { ending, release } = endingWith(input.signal);
  let isArriving = false;
  try {
    // Raced, because a fetch may not heed its signal, or not while the body arrives.
    const answer = await within(input.timeoutMs, ending, exchange(input, ending, release));
    isArriving = answer.content instanceof ReadableStream;
    return answer;
  } catch (cause) {
    if (ending.signal.aborted) throw ending.signal.reason;
    throw cause;
  } finally {
    if (!isArriving) release();
  }
}

async function exchange(
  { fetch, url, request, heard, as, timeoutMs }: AttemptInput,
  ending: AbortController,
  release: () => void,
): Promise<ReadableAnswer> {
  const sent = await request(ending.signal);
  try {
    const response = await fetch(url, sent);
    const { status, headers, ok } = response;
    heard(response);
    refuseRedirect(response);
    const content =
      ok && as === "stream"
        ? bodyOf(response, { timeoutMs, ending, release })
        : await (ok && as === "blob" ? response.blob() : response.text());
    return { status, headers, content };
  } catch (cause) {
    if (cause instanceof ConnectionError) throw cause;
    throw new ConnectionError(`No whole answer from ${new URL(url).origin}`, { cause });
  }
}

/** Throws for a redirect: the key must not follow it. Pages do not see where it leads. */
export function refuseRedirect({ status, type, headers }: Response): void {
  const isRedirect = type === "opaqueredirect" || (status >= 300 && status < 400 && status !== 304);
  if (!isRedirect) return;
  const place = headers.get("location");
  const message = `The service redirects${place === null ? "" : ` to ${place}`}: set baseUrl to where it is`;
  throw new ConnectionError(message, { code: "redirected" });
}
