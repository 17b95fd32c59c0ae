import { setImmediate as nextTurn } from "node:timers/promises";
import type { FastifyReply } from "fastify";
import { tryAgainShortly } from "../problems/shortly.ts";

/** How long one piece of work goes on before others get a turn. A fifth of what nobody may hold the event loop for. */
const TURN_MS = 10;

/** Lets others have their turn when this request has had its own; throws when nobody waits for its answer any more. */
export type Turns = () => Promise<void>;

/**
 * The turns of one request that computes for long. Call them between pieces of work. The answer may have been given already, as a
 * refusal for taking too long, or the connection closed: then the rest is not computed.
 */
export function turnsOf(reply: FastifyReply): Turns {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < TURN_MS) return;
    await nextTurn();
    since = performance.now();
    if (reply.sent || reply.raw.destroyed) throw tryAgainShortly("took-too-long");
  };
}
