import { type Follow, GroundMoved } from "../store/commit.ts";
import type { Change } from "../store/port.ts";
import { lapsesAfter } from "./lapse.ts";
import { outcomeOn } from "./outcome.ts";
import type { GroundQueries } from "./reads.ts";

/**
 * What approved settings make of every change: those whose ground it moved lapse, and one that is being issued must still come out
 * as it was decided, or it is decided again.
 */
export function settingsFollow(queries: GroundQueries): Follow {
  return (changes, stamp) => {
    for (const change of changes) requireSameGround(change, stamp.at, queries);
    return lapsesAfter(changes, stamp, queries);
  };
}

function requireSameGround(change: Change, at: string, queries: GroundQueries): void {
  if (change.type !== "approval" || !("record" in change)) return;
  const { id, state, issuedAt, woodIds, courseId, resultDigest } = change.record;
  if (state !== "issued" || issuedAt !== at) return;
  const request = queries.requestOf(id);
  const outcome = request && outcomeOn(queries.groundsAt(at)(request, woodIds, courseId));
  if (outcome?.kind !== "may-run" || outcome.resultDigest !== resultDigest)
    throw new GroundMoved("approval", id);
}
