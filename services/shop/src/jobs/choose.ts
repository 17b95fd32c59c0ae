import { compareRanks, VERDICT_RANK } from "@rimwise/domain";
import { type NeedOfBit, whyElsewhere } from "../reservations/elsewhere.ts";
import type { Attempt } from "./planned.ts";
import type { NotTaken } from "./work-schema.ts";

/** When a job is made, and by whom: who else has a bit then is in its way. */
export type JobTime = NeedOfBit & {
  /** What a settled job was planned with, as `settledName` calls it: that is kept to as long as it may be run. */
  readonly settled: ReadonlySet<string>;
};

/** A bit in a machine, by one name. */
export function settledName(bitId: string, routerId: string, mounting: string): string {
  return `${bitId} ${routerId} ${mounting}`;
}

/** The attempt that is taken, and what became of the others. */
export type Choice = {
  readonly taken: Attempt | undefined;
  readonly notTaken: readonly NotTaken[];
  /** Why there is no bit to try, if that is known. */
  readonly why?: string | undefined;
};

/** So many that were not taken are named. */
const MOST_NAMED = 8;

/**
 * The best of several attempts at one cut: one that may be run before one that asks for care, a bit that is here before one that is
 * elsewhere, then the fewest passes, then the least time; of equals the first. An attempt that must not be run is never taken while another may
 * be. Pure.
 */
export function choose(attempts: readonly Attempt[], time: JobTime): Choice {
  const ranked = attempts
    .map((each, index) => ({ each, rank: [...rankOf(each, time), index] }))
    .sort((one, other) => compareRanks(one.rank, other.rank))
    .map(({ each }) => each);
  const [best] = ranked;
  const taken = best?.outcome.kind === "planned" ? best : undefined;
  const others = ranked.filter((each) => each !== taken);
  return { taken, notTaken: onceForEachBit(others, taken, time).slice(0, MOST_NAMED) };
}

function rankOf({ candidate, machine, outcome }: Attempt, time: JobTime): number[] {
  if (outcome.kind === "refused") return [2];
  const { verdict, passes } = outcome.plan;
  const isElsewhere = whyElsewhere(candidate.bit, time) !== undefined;
  const name = settledName(candidate.bit.record.id, machine.routerId, machine.mounting);
  return [
    verdict === "do-not-run" ? 1 : 0,
    time.settled.has(name) ? 0 : 1,
    VERDICT_RANK[verdict],
    isElsewhere ? 1 : 0,
    passes.length,
    secondsOf(passes),
  ];
}

function secondsOf(passes: readonly { readonly secondsPerEdge: readonly number[] }[]): number {
  return passes.flatMap(({ secondsPerEdge }) => secondsPerEdge).reduce((sum, seconds) => sum + seconds, 0);
}

/** The best attempt with each bit but the one taken; in another machine the same bit need not be named again. */
function onceForEachBit(others: readonly Attempt[], taken: Attempt | undefined, time: JobTime): NotTaken[] {
  const named = new Set([taken?.candidate.bit.record.id]);
  return others.flatMap((each) => {
    const { id } = each.candidate.bit.record;
    if (named.has(id)) return [];
    named.add(id);
    return [{ bitId: id, routerId: each.machine.routerId, ...whyNot(each, taken, time) }];
  });
}

function whyNot(
  { candidate, outcome }: Attempt,
  taken: Attempt | undefined,
  time: JobTime,
): Pick<NotTaken, "code" | "text"> {
  const { record } = candidate.bit;
  if (record.retirement !== undefined || record.hold !== undefined) {
    return { code: "out-of-use", text: outcome.kind === "refused" ? outcome.text : "It is out of use." };
  }
  if (outcome.kind === "refused") return { code: "not-possible", text: outcome.text };
  const { plan } = outcome;
  if (plan.verdict === "do-not-run") return { code: "not-to-run", text: "Its plan says not to run it." };
  const best = taken?.outcome.kind === "planned" ? taken.outcome.plan : undefined;
  if (best !== undefined && VERDICT_RANK[plan.verdict] > VERDICT_RANK[best.verdict]) {
    return { code: "more-care", text: "Its plan asks for more care." };
  }
  const elsewhere = whyElsewhere(candidate.bit, time);
  if (elsewhere !== undefined) return { code: "elsewhere", text: elsewhere };
  if (best !== undefined && plan.passes.length > best.passes.length) {
    const text = `It takes ${plan.passes.length} passes instead of ${best.passes.length}.`;
    return { code: "more-passes", text };
  }
  if (best !== undefined && secondsOf(plan.passes) > secondsOf(best.passes)) {
    return { code: "slower", text: "It is fed more slowly." };
  }
  return { code: "same-again", text: "It does as well as the one taken." };
}
