/** Lets those who wait know that something was committed. It carries nothing: what happened is read from the table. */
export type Bell = {
  /** How often it has rung. Read it before looking at the table, and nothing can slip by between. */
  readonly rings: () => number;
  readonly ring: () => void;
  /** True as soon as it has rung more than `heard` times; false after `atMostMs`, or when the signal ends the wait. */
  readonly wait: (heard: number, atMostMs: number, signal: AbortSignal) => Promise<boolean>;
  /** Calls somebody at every ring, until the function it returns is called. */
  readonly listen: (called: () => void) => () => void;
};

export function newBell(): Bell {
  const waiting = new Set<() => void>();
  const listening = new Set<() => void>();
  let rings = 0;
  return {
    rings: () => rings,
    ring: () => {
      rings += 1;
      for (const wake of [...waiting]) wake();
      for (const called of [...listening]) called();
    },
    wait: (heard, atMostMs, signal) =>
      new Promise((resolve) => {
        const end = () => {
          clearTimeout(timer);
          waiting.delete(end);
          signal.removeEventListener("abort", end);
          resolve(rings > heard);
        };
        const timer = setTimeout(end, atMostMs);
        waiting.add(end);
        signal.addEventListener("abort", end, { once: true });
        if (signal.aborted || rings > heard) end();
      }),
    listen: (called) => {
      listening.add(called);
      return () => void listening.delete(called);
    },
  };
}
