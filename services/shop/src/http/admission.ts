import type { FastifyRequest } from "fastify";
import { callerOf } from "../access/caller.ts";
import { Problem } from "../problems/problem.ts";
import { tryAgainShortly } from "../problems/shortly.ts";

/** Large computations that run at once, of everybody; each holds its whole answer in memory. */
const MOST_AT_ONCE = 4;

/** Runs a large computation, one of each key at a time and a few of everybody; others are asked to come again. */
export type Admit = <Answer>(request: FastifyRequest, compute: () => Promise<Answer>) => Promise<Answer>;

/** The door to large computations of one service. */
export function admission(): Admit {
  const running = new Set<string>();
  return async (request, compute) => {
    const { keyId } = callerOf(request);
    if (running.has(keyId)) {
      throw new Problem(
        "too-many-requests",
        "A large computation of this key is running. Send the next one after it.",
        {
          headers: { "Retry-After": "1" },
        },
      );
    }
    if (running.size >= MOST_AT_ONCE) throw tryAgainShortly("busy");
    running.add(keyId);
    try {
      return await compute();
    } finally {
      running.delete(keyId);
    }
  };
}
