import { shopPolicyKind } from "../shop-policy/kind.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import { isChangeOf } from "../store/changes.ts";
import type { Change, Stamp } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { bitAfterUpkeep } from "./decide.ts";
import { bitKind } from "./kind.ts";
import { bits } from "./reads.ts";
import type { BitRecord } from "./schema.ts";
import { inspectionDue } from "./standing.ts";

/** Bits that memory holds while they are looked at. */
const BITS_AT_ONCE = 100;

/**
 * A bit is due for inspection as the shop's policy says when its change is written, not when it was decided; when the policy
 * changes, every bit follows in the same transaction.
 */
export function* bitsFollowPolicy(changes: readonly Change[], { at }: Stamp): Question<readonly Change[]> {
  if (changes.some((change) => isChangeOf(change, shopPolicyKind))) return yield* everyBitRescheduled(at);
  const changed = changes.flatMap((change) =>
    isChangeOf(change, bitKind) && "record" in change ? [change.record] : [],
  );
  return yield* rescheduled(changed, at);
}

/** Every bit whose inspection is due at another time under the shop's policy as it is now. */
export function* everyBitRescheduled(at: string): Question<readonly Change[]> {
  const changes: Change[] = [];
  for (let afterId: string | undefined = ""; afterId !== undefined; ) {
    const page: BitRecord[] = yield* bits.page(afterId, BITS_AT_ONCE);
    changes.push(...(yield* rescheduled(page, at)));
    afterId = page.at(-1)?.id;
  }
  return changes;
}

function* rescheduled(records: readonly BitRecord[], at: string): Question<Change[]> {
  if (records.length === 0) return [];
  const policy = yield* shopPolicy();
  return records
    .filter((bit) => inspectionDue(bit, at, policy).inspectionDueAt !== bit.inspectionDueAt)
    .flatMap((bit) => bitAfterUpkeep(bit, "rescheduled", {}, at, policy).changes);
}
