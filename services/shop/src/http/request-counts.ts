import type { FastifyRateLimitStore } from "@fastify/rate-limit";

type Window = { readonly startedMs: number; current: number };

/** More callers are not counted at once: the one who has been quiet longest is forgotten. */
const MOST_CALLERS = 5000;

/**
 * Counts requests by a clock that nobody can set. By the clock of the wall, a caller who was refused when it went back a day would
 * stay refused for that day.
 */
export class RequestCounts implements FastifyRateLimitStore {
  readonly #windows = new Map<string, Window>();

  incr(
    caller: string,
    done: (error: null, result: { current: number; ttl: number }) => void,
    windowMs: number,
  ): void {
    const nowMs = performance.now();
    const known = this.#windows.get(caller);
    const isOpen = known !== undefined && nowMs < known.startedMs + windowMs;
    const window = isOpen ? known : { startedMs: nowMs, current: 0 };
    window.current += 1;
    this.#windows.delete(caller);
    this.#windows.set(caller, window);
    if (this.#windows.size > MOST_CALLERS) this.#forgetQuietest();
    done(null, { current: window.current, ttl: Math.ceil(windowMs - (nowMs - window.startedMs)) });
  }

  child(): RequestCounts {
    return this;
  }

  #forgetQuietest(): void {
    const [quietest] = this.#windows.keys();
    if (quietest !== undefined) this.#windows.delete(quietest);
  }
}
