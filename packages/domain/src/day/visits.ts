import type { Steps } from "../quantity/steps.ts";
import { priorityQueue } from "./priority-queue.ts";
import type { DayProblem } from "./problem.ts";
import { hasDone, type RestCosts, restCosts, restTicks, type Standing } from "./rest-ticks.ts";

/** The order in which bits are put in, as far as it was found, and what no order of the day costs less than. */
export type Visits = { readonly order: readonly number[]; readonly boundTicks: number };

/** After so many set-ups of standings looked at, the search is left with the bound it has: some 100 ms. */
const LOOKED_AT_MAX = 160_000;

/** Set-ups of standings looked at between two rests: a few milliseconds. */
const LOOKED_AT_ONCE = 1000;

/** A day so far. */
type SoFar = Standing & {
  readonly order: readonly number[];
  readonly ticks: number;
  /** With what the rest costs at least. */
  readonly boundTicks: number;
};

/**
 * The fewest times that bits are put in and stations changed: a search (A*, Hart, Nilsson and Raphael 1968) over which bit comes next, in
 * which every bit, once it is in, does all it may. What it finds costs no more than any order of the day: whatever an order does, doing
 * more at each visit leaves no more to do. Yields between pieces of work.
 */
export function* fewestVisits(problem: DayProblem): Steps<Visits> {
  const costs = yield* restCosts(problem);
  const leastTicks = new Map<string, number>();
  const open = priorityQueue<SoFar>((one, other) =>
    one.boundTicks === other.boundTicks
      ? one.order.length > other.order.length
      : one.boundTicks < other.boundTicks,
  );
  const start = { done: 0n, mounted: problem.atStation.map(() => -1), here: -1 };
  let farthest: SoFar = { ...start, order: [], ticks: 0, boundTicks: restTicks(costs, start) };
  open.add(farthest);
  for (let lookedAt = 0, restAt = LOOKED_AT_ONCE; ; lookedAt += problem.count) {
    const soFar = open.takeLeast();
    if (soFar === undefined || soFar.order.length === problem.count) return soFar ?? farthest;
    if (soFar.order.length > farthest.order.length) farthest = soFar;
    if (lookedAt > LOOKED_AT_MAX) return { order: farthest.order, boundTicks: soFar.boundTicks };
    for (const next of waysOn(costs, soFar)) {
      const standing = `${next.done.toString(36)} ${next.mounted.join()} ${next.here}`;
      if ((leastTicks.get(standing) ?? Number.POSITIVE_INFINITY) <= next.ticks) continue;
      leastTicks.set(standing, next.ticks);
      open.add(next);
    }
    if (lookedAt < restAt) continue;
    restAt = lookedAt + LOOKED_AT_ONCE;
    yield;
  }
}

/**
 * Every visit that may come next. If the bit that is in has no more to do, another one of this station that can do all its own comes at
 * once: nothing is lost by it.
 */
function waysOn(costs: RestCosts, soFar: SoFar): SoFar[] {
  const { done, mounted, here } = soFar;
  const isIn = costs.blocks[mounted[here] ?? -1];
  const isFinished = isIn !== undefined && hasDone(done, isIn.bits);
  const ways: SoFar[] = [];
  for (const [block, { bits }] of costs.blocks.entries()) {
    if (hasDone(done, bits)) continue;
    const next = visited(costs, soFar, block);
    if (next === undefined) continue;
    if (isFinished && next.here === here && hasDone(next.done, bits)) return [next];
    ways.push(next);
  }
  return ways;
}

/** The day after one visit that does all it may; undefined if it may do nothing. */
function visited(costs: RestCosts, soFar: SoFar, block: number): SoFar | undefined {
  const visit = costs.blocks[block];
  if (visit === undefined) return undefined;
  const { station: here, bits, members, firstTicks, againTicks } = visit;
  let { done } = soFar;
  const order = [...soFar.order];
  for (let length = -1; length < order.length; ) {
    length = order.length;
    for (const { place, bit, beforeBits } of members) {
      if ((done & bit) !== 0n || !hasDone(done, beforeBits)) continue;
      done |= bit;
      order.push(place);
    }
  }
  if (done === soFar.done) return undefined;
  const putInTicks = (soFar.done & bits) === 0n ? firstTicks : againTicks;
  const moveTicks = soFar.here >= 0 && soFar.here !== here ? costs.problem.moveTicks : 0;
  const ticks = soFar.ticks + (soFar.mounted[here] === block ? 0 : putInTicks) + moveTicks;
  const mounted = soFar.mounted.map((each, station) => (station === here ? block : each));
  const standing = { done, mounted, here };
  return { ...standing, order, ticks, boundTicks: ticks + restTicks(costs, standing) };
}
