import { loanKind } from "../loans/kind.ts";
import { dayOf, inTheWay } from "../reservations/days.ts";
import { reservationKind } from "../reservations/kind.ts";
import { reservations } from "../reservations/reads.ts";
import { isChangeOf } from "../store/changes.ts";
import { type Change, ConflictError } from "../store/port.ts";
import type { Question } from "../store/query.ts";

/**
 * No bit is kept for two jobs on one day, nor lent over days it is kept for: what was free when it was decided must be so when it is
 * written. Throws ConflictError otherwise.
 */
export function* reservationsHold(changes: readonly Change[]): Question<readonly Change[]> {
  for (const change of changes) {
    if (change.action !== "create") continue;
    if (isChangeOf(change, reservationKind) && change.action === "create") {
      const { record } = change;
      const kept = yield* reservations.keptOf(record.bitId);
      if (inTheWay(kept, record, { jobId: record.jobId }).length > 0)
        throw new ConflictError(reservationKind, record.id);
    } else if (isChangeOf(change, loanKind) && change.action === "create") {
      const { record } = change;
      const days = { from: dayOf(record.createdAt), until: dayOf(record.dueAt) };
      const kept = yield* reservations.keptOf(record.bitId);
      if (inTheWay(kept, days, record).length > 0) throw new ConflictError(loanKind, record.id);
    }
  }
  return [];
}
