import type { Steps } from "../quantity/steps.ts";
import { type BlockCosts, blockCosts } from "./block-costs.ts";
import type { DayProblem } from "./problem.ts";
import { mustBreak } from "./visits-ticks.ts";

/** What is needed to say what the rest of a day costs at least. Sets of set-ups are bits. */
export type RestCosts = {
  readonly problem: DayProblem;
  readonly blocks: readonly Block[];
};

type Block = BlockCosts & {
  readonly station: number;
  readonly bits: bigint;
  readonly members: readonly Member[];
};

type Member = {
  readonly place: number;
  readonly bit: bigint;
  readonly beforeBits: bigint;
  /** What it waits for that another bit does at its station. */
  readonly otherBits: bigint;
  /** From it to the end of the day its bit is put in so many times, with its own. */
  readonly visits: number;
};

/** Where a day stands: what is done, the block each station is set up for (−1: none), and the station of the last one (−1: none). */
export type Standing = { readonly done: bigint; readonly mounted: readonly number[]; readonly here: number };

export function* restCosts(problem: DayProblem): Steps<RestCosts> {
  const costs = yield* blockCosts(problem);
  const blocks: Block[] = [];
  for (const [block, places] of problem.blocks.entries()) {
    const { firstTicks = 0, againTicks = 0 } = costs[block] ?? {};
    blocks.push({
      firstTicks,
      againTicks,
      station: problem.stationOf[places[0] ?? 0] ?? 0,
      bits: bitsOf(places),
      members: membersOf(problem, places),
    });
    yield;
  }
  return { problem, blocks };
}

/**
 * What the rest of the day costs at least: every bit with work left is put in as often as what waits for each other asks, every other
 * station with work left is gone to.
 */
export function restTicks({ problem, blocks }: RestCosts, { done, mounted, here }: Standing): number {
  let ticks = 0;
  const ahead = new Set<number>();
  for (const [block, { station, bits, members, firstTicks, againTicks }] of blocks.entries()) {
    if (hasDone(done, bits)) continue;
    ahead.add(station);
    let visits = 0;
    for (const member of members) {
      if ((done & member.bit) !== 0n) continue;
      // A bit that is in needs not be put in for what waits for no other bit here.
      const isIn = mounted[station] === block && hasDone(done, member.otherBits);
      visits = Math.max(visits, isIn ? member.visits - 1 : member.visits);
    }
    ticks += visits * againTicks;
    if ((done & bits) === 0n) ticks += firstTicks - againTicks;
  }
  const moves = here < 0 ? ahead.size - 1 : ahead.size - (ahead.has(here) ? 1 : 0);
  return ticks + Math.max(0, moves) * problem.moveTicks;
}

export function hasDone(done: bigint, bits: bigint): boolean {
  return (done & bits) === bits;
}

function membersOf(problem: DayProblem, places: readonly number[]): Member[] {
  const { before, stationOf, blockOf } = problem;
  const visitsOf = new Map<number, number>();
  // Whoever waits for another has more before it.
  const lastFirst = [...places].sort((a, b) => (before[b]?.size ?? 0) - (before[a]?.size ?? 0));
  for (const place of lastFirst) {
    const later = lastFirst.filter((each) => visitsOf.has(each) && mustBreak(problem, place, each));
    visitsOf.set(place, 1 + Math.max(0, ...later.map((each) => visitsOf.get(each) ?? 0)));
  }
  return places.map((place) => {
    const waitsFor = [...(before[place] ?? [])];
    const others = waitsFor.filter(
      (each) => stationOf[each] === stationOf[place] && blockOf[each] !== blockOf[place],
    );
    return {
      place,
      bit: bitsOf([place]),
      beforeBits: bitsOf(waitsFor),
      otherBits: bitsOf(others),
      visits: visitsOf.get(place) ?? 1,
    };
  });
}

function bitsOf(places: readonly number[]): bigint {
  return places.reduce((bits, place) => bits | (1n << BigInt(place)), 0n);
}
