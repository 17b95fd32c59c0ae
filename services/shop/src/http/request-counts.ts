import type { OwnCounts } from "../store/store.ts";

type Window = { readonly endsMs: number; current: number; isTold: boolean };

/** More callers are not counted at once: the one who has been quiet longest is forgotten. */
const MOST_CALLERS = 5000;

/** How often a caller has asked in the window that is open, and when it ends. */
type Count = { readonly current: number; readonly leftMs: number };

export type RequestCounts = {
  /** Counts a request of a caller. */
  readonly count: (caller: string) => Count;
  /** What was counted of each caller since it was last asked, in windows that are open still. */
  readonly untold: () => OwnCounts;
  /** What other processes have counted of these callers in their open windows. */
  readonly heard: (others: ReadonlyMap<string, number>, of: OwnCounts) => void;
};

/**
 * Counts requests in windows of so many milliseconds, by a clock that nobody can set. By the clock of the wall, a caller who was
 * refused when it went back a day would stay refused for that day.
 */
export function requestCounts(windowMs: number): RequestCounts {
  const windows = new Map<string, Window>();
  const elsewhere = new Map<string, number>();
  /** Who asked last: they stand at the end already, where the map keeps them. */
  let latest: string | undefined;

  function forgetQuietest(): void {
    const [quietest] = windows.keys();
    if (quietest === undefined) return;
    windows.delete(quietest);
    elsewhere.delete(quietest);
  }

  return {
    count: (caller) => {
      const nowMs = performance.now();
      const known = windows.get(caller);
      const isOpen = known !== undefined && nowMs < known.endsMs;
      const window = isOpen ? known : { endsMs: nowMs + windowMs, current: 0, isTold: false };
      if (!isOpen) elsewhere.delete(caller);
      window.current += 1;
      window.isTold = false;
      if (!isOpen || caller !== latest) {
        windows.delete(caller);
        windows.set(caller, window);
        latest = caller;
      }
      if (windows.size > MOST_CALLERS) forgetQuietest();
      const current = window.current + (elsewhere.get(caller) ?? 0);
      // What was added and is taken away again can be a rounding error longer.
      return { current, leftMs: Math.min(windowMs, Math.ceil(window.endsMs - nowMs)) };
    },
    untold: () => {
      const nowMs = performance.now();
      const untold = [...windows].filter(([, { endsMs, isTold }]) => !isTold && endsMs > nowMs);
      for (const [, window] of untold) window.isTold = true;
      return new Map(
        untold.map(([caller, { current, endsMs }]) => [
          caller,
          { count: current, leftMs: Math.ceil(endsMs - nowMs) },
        ]),
      );
    },
    heard: (others, of) => {
      for (const caller of of.keys()) elsewhere.delete(caller);
      for (const [caller, count] of others) elsewhere.set(caller, count);
    },
  };
}
