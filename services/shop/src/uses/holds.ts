import { bitKind } from "../bits/kind.ts";
import { colletKind } from "../collets/kind.ts";
import { Problem } from "../problems/problem.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { isChangeOf, subjectOf } from "../store/changes.ts";
import { type Change, ConflictError, type Stamp } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { holdsOf } from "./reads.ts";

/** Refuses somebody who is not in charge another hold when they have held as many in a day as the shop allows. */
export function* requireHoldLeft(by: string, at: string): Question<void> {
  const { holdsPerDayMax } = yield* shopPolicy();
  if ((yield* holdsOf(by, at)) < holdsPerDayMax) return;
  throw new Problem(
    "holds-used-up",
    `You have held ${holdsPerDayMax} in the last 24 hours. Put this one aside and call somebody in charge, who can hold it.`,
  );
}

/**
 * What routes have seen of somebody's holds must still be so when another is written: many asked for at once are as limited as
 * one after the other. Throws ConflictError otherwise.
 */
export function* holdsAreFew(changes: readonly Change[], { at }: Stamp): Question<readonly Change[]> {
  for (const change of changes) {
    if (!isChangeOf(change, bitKind) && !isChangeOf(change, colletKind)) continue;
    const record = "record" in change ? change.record : undefined;
    const hold = record?.hold;
    if (hold?.since !== at || hold.by === undefined || hold.isByStaff !== false) continue;
    const { holdsPerDayMax } = yield* shopPolicy();
    if ((yield* holdsOf(hold.by, at)) > holdsPerDayMax)
      throw new ConflictError(change.kind, subjectOf(change));
  }
  return [];
}
