import { setImmediate as nextTurn } from "node:timers/promises";
import type { FastifyReply } from "fastify";
import { tryAgainShortly } from "../problems/shortly.ts";
import { TURN_MS } from "../store/turn.ts";

/** Lets others have their turn when this work has had its own. Call it between pieces of work. */
export type Turns = () => Promise<void>;

/** The turns of work that goes on for long. `afterEach` is called when others have had theirs, and may throw to end the work. */
export function turns(afterEach: () => void = () => {}): Turns {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < TURN_MS) return;
    await nextTurn();
    since = performance.now();
    afterEach();
  };
}

/**
 * The turns of a request that computes its answer. The answer may have been given already, as a refusal for taking too long, or
 * the connection closed: then the rest is not computed.
 */
export function turnsOf(reply: FastifyReply): Turns {
  return turns(() => {
    if (reply.sent || reply.raw.destroyed) throw tryAgainShortly("took-too-long");
  });
}

/** Goes through work in steps, giving others their turn after each. */
export async function inTurns<Result>(steps: Generator<void, Result>, turns: Turns): Promise<Result> {
  for (;;) {
    const step = steps.next();
    await turns();
    if (step.done === true) return step.value;
  }
}
