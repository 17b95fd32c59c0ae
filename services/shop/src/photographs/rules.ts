import { isChangeOf } from "../store/changes.ts";
import { type Change, ConflictError } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { MOST_OF_A_BIT } from "./decide.ts";
import { photographKind } from "./kind.ts";
import { photographs } from "./reads.ts";

/** A bit has no more photographs than it may, whoever else adds one at the same moment. Throws ConflictError otherwise. */
export function* photographsAreFew(changes: readonly Change[]): Question<readonly Change[]> {
  for (const change of changes) {
    if (!isChangeOf(change, photographKind) || change.action !== "create") continue;
    const { bitId } = change.record;
    if ((yield* photographs.countOf(bitId)) > MOST_OF_A_BIT) throw new ConflictError(photographKind, bitId);
  }
  return [];
}
