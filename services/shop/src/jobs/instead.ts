import type { BitRecord } from "../bits/schema.ts";
import { freeInstead } from "../reservations/alike.ts";
import { dayOf } from "../reservations/days.ts";
import { whyElsewhere } from "../reservations/elsewhere.ts";
import type { Question } from "../store/query.ts";
import type { JobTime } from "./choose.ts";
import type { JobBit } from "./facts.ts";

/** Bits of the rack that would make the same cuts as those that are elsewhere when a job is made, by the id of what they stand in for. */
export function* insteadOf(
  bits: ReadonlyMap<string, JobBit>,
  time: JobTime,
): Question<ReadonlyMap<string, readonly BitRecord[]>> {
  const today = dayOf(time.at);
  const days = time.days ?? { from: today, until: today };
  const instead = new Map<string, readonly BitRecord[]>();
  for (const [bitId, bit] of bits) {
    if (whyElsewhere(bit, time) !== undefined) instead.set(bitId, yield* freeInstead(bit.record, days));
  }
  return instead;
}
