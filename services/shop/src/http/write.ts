import type { FastifyRequest } from "fastify";
import { callerOf } from "../access/caller.ts";
import { Problem } from "../problems/problem.ts";
import { subjectOf } from "../store/changes.ts";
import type { Commit, Stamp, WriteBatch } from "../store/port.ts";
import { staleVersion } from "./conditional.ts";

/**
 * Commits a write batch or throws the problem that says why it cannot be: a 412 when a record it changes has moved on, unless
 * the caller named no version and `ifStale` says it otherwise; a 409 when something else that it rests on has.
 */
export type Write = (batch: WriteBatch, ifStale?: (version: number) => Problem) => Promise<void>;

/** The door for writes as routes use it. */
export function writeThrough(commit: Commit): Write {
  return async (batch, ifStale = staleVersion) => {
    const result = await commit(batch);
    switch (result.kind) {
      case "committed":
        return;
      case "stale":
        throw isChangedBy(batch, result.id) ? ifStale(result.version) : changedMeanwhile();
      case "gone":
        throw isChangedBy(batch, result.id)
          ? new Problem("not-found", `There is no ${result.noun} ${result.id} any more.`)
          : changedMeanwhile();
      case "conflict":
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

/** How often something is decided again because what it rests on changed between reading and writing. */
const MOST_ATTEMPTS = 5;

/** Decides again by how things are now when what a decision rests on has changed before it was written. */
export async function retryOnConflict<Value>(attempt: () => Promise<Value>): Promise<Value> {
  for (let attempts = 1; ; attempts += 1) {
    try {
      return await attempt();
    } catch (error) {
      const isConflict = error instanceof Problem && error.code === "changed-meanwhile";
      if (!isConflict || attempts === MOST_ATTEMPTS) throw error;
    }
  }
}

/** Who asks, when, and why if a reason was given: what every change is marked with. */
export function stampOf(request: FastifyRequest, now: Date): Stamp {
  const { id: requestId, why } = request;
  return { by: callerOf(request).keyId, at: now.toISOString(), requestId, ...(why !== undefined && { why }) };
}

function isChangedBy({ changes }: WriteBatch, id: string): boolean {
  return changes.some((change) => subjectOf(change) === id);
}
