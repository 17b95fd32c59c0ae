import type { App } from "../http/app-type.ts";
import { Problem } from "../problems/problem.ts";

/** The streams that are open now: counted by key, and ended when the service closes. */
export type OpenStreams = {
  /** Counts a stream in, or refuses it. Its signal ends with `end` or with the service. */
  readonly open: (keyId: string) => { readonly signal: AbortSignal; readonly end: () => void };
};

/** A dashboard on every bench, with some to spare; each holds a connection. */
const MOST_FOR_ONE_KEY = 10;

const RETRY_AFTER_S = "10";

export function openStreams(app: App): OpenStreams {
  const byKey = new Map<string, Set<AbortController>>();
  app.addHook("preClose", async () => {
    for (const controllers of byKey.values()) for (const each of controllers) each.abort();
  });
  return {
    open: (keyId) => {
      const own = byKey.get(keyId) ?? new Set();
      if (own.size >= MOST_FOR_ONE_KEY) throw tooMany();
      const ending = new AbortController();
      byKey.set(keyId, own.add(ending));
      const end = () => {
        ending.abort();
        own.delete(ending);
        if (own.size === 0 && byKey.get(keyId) === own) byKey.delete(keyId);
      };
      return { signal: ending.signal, end };
    },
  };
}

function tooMany(): Problem {
  return new Problem("too-many-requests", `A key may have ${MOST_FOR_ONE_KEY} streams open at a time.`, {
    headers: { "Retry-After": RETRY_AFTER_S },
  });
}
