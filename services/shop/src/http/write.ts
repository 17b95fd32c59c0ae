import type { FastifyRequest } from "fastify";
import { callerOf } from "../keys/caller.ts";
import { Problem } from "../problems/problem.ts";
import { subjectOf } from "../store/changes.ts";
import type { Commit, Order, Stamp } from "../store/port.ts";
import { staleVersion } from "./conditional.ts";

/**
 * Commits an order or throws the problem that says why it cannot be: a 412 where a record it changes has moved on, unless
 * the caller named no version and `ifStale` says it otherwise; a 409 where something else that it rests on has.
 */
export type Write = (order: Order, ifStale?: (version: number) => Problem) => Promise<void>;

/** The door for writes as routes use it. */
export function writeThrough(commit: Commit): Write {
  return async (order, ifStale = staleVersion) => {
    const outcome = await commit(order);
    switch (outcome.kind) {
      case "committed":
        return;
      case "stale":
        throw isChangedBy(order, outcome.id) ? ifStale(outcome.version) : changedMeanwhile();
      case "gone":
        throw new Problem("not-found", `There is no ${outcome.type} ${outcome.id} any more.`);
      case "moved":
        throw changedMeanwhile();
      case "answered":
        throw new Problem("idempotency-in-progress", "Send it again to get the first one's answer.", {
          headers: { "Retry-After": "1" },
        });
    }
  };
}

/** The 409 for a decision whose grounds have moved on. */
export function changedMeanwhile(): Problem {
  return new Problem("changed-meanwhile", "Ask again: it will be decided by how things are now.");
}

/** How often a decision is made anew because its grounds moved between reading and writing. */
const MOST_ATTEMPTS = 5;

/** Decides again by how things are now, where what a decision rests on has changed before it was written. */
export async function decidedAnew<Value>(attempt: () => Promise<Value>): Promise<Value> {
  for (let attempts = 1; ; attempts += 1) {
    try {
      return await attempt();
    } catch (error) {
      const isMoved = error instanceof Problem && error.code === "changed-meanwhile";
      if (!isMoved || attempts === MOST_ATTEMPTS) throw error;
    }
  }
}

/** Who asks, when, and why where that was told: what every change is marked with. */
export function stampOf(request: FastifyRequest, now: Date): Stamp {
  const { id: requestId, why } = request;
  return { by: callerOf(request).keyId, at: now.toISOString(), requestId, ...(why !== undefined && { why }) };
}

function isChangedBy({ changes }: Order, id: string): boolean {
  return changes.some((change) => subjectOf(change) === id);
}
