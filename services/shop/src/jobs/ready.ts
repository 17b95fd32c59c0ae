import { bitKind } from "../bits/kind.ts";
import type { BitRecord } from "../bits/schema.ts";
import { requireFound } from "../http/read-routes.ts";
import { policyInForce } from "../policy/in-force.ts";
import { describeInstead, freeInstead } from "../reservations/alike.ts";
import { whyElsewhere } from "../reservations/elsewhere.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import { timeOf } from "./computed.ts";
import { jobBit } from "./facts.ts";
import { groundsChanged } from "./grounds.ts";
import type { JobRecord } from "./schema.ts";

/** The bits a job needs, and what stands in the way of keeping them for its days. */
export type Needed = { readonly bits: readonly BitRecord[]; readonly inTheWay: readonly string[] };

/** Looks whether everything a job rests on is still so, and its bits are free on its days; each that is not names what would do instead. */
export function* neededFor(job: JobRecord, at: string): Question<Needed> {
  const policy = policyInForce(yield* shopLayer(), job.policy ?? {});
  const time = timeOf(job, at);
  const needed: BitRecord[] = [];
  const collisions: string[] = [];
  for (const { bitId } of job.work.bits) {
    const bit = requireFound(bitKind, bitId, yield* jobBit(bitId, at, policy));
    needed.push(bit.record);
    const why = whyElsewhere(bit, time);
    if (why === undefined) continue;
    const free = time.days === undefined ? [] : yield* freeInstead(bit.record, time.days);
    collisions.push(`${bit.record.name}: ${why} ${describeInstead(free)}`);
  }
  const changed = (yield* groundsChanged(job, at))
    .filter(({ code }) => code !== "bit-elsewhere")
    .map(({ text }) => `${text} Compute the job again.`);
  return { bits: needed, inTheWay: [...collisions, ...changed] };
}
