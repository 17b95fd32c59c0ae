import { ConnectionError } from "./errors.ts";
import { within } from "./within.ts";

type Arrival = {
  /** How long to wait for each part. */
  readonly timeoutMs: number;
  readonly ending: AbortController;
  readonly release: () => void;
};

/**
 * The body of an answer as it arrives. It breaks with a TimeoutError, a ConnectionError, or the reason the connection was ended for;
 * cancelling it closes the connection.
 */
export function bodyOf(
  { body }: Response,
  { timeoutMs, ending, release }: Arrival,
): ReadableStream<Uint8Array> {
  const reader = (body ?? new Blob().stream()).getReader();
  return new ReadableStream<Uint8Array>({
    pull: async (controller) => {
      try {
        const { done, value } = await within(timeoutMs, ending, reader.read());
        if (!done) return controller.enqueue(value);
        release();
        controller.close();
      } catch (cause) {
        release();
        const isEnded = ending.signal.aborted;
        ending.abort(cause);
        controller.error(isEnded ? cause : new ConnectionError("The answer broke off", { cause }));
      }
    },
    cancel: (reason) => {
      release();
      ending.abort(reason);
    },
  });
}
