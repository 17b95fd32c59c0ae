import type { Steps } from "../quantity/steps.ts";
import type { DayProblem } from "./problem.ts";
import { visitsTicks } from "./visits-ticks.ts";

/** What the set-ups of one bit at one station cost at least. */
export type BlockCosts = {
  /** All of them, when the bit is put in for the first time. */
  readonly firstTicks: number;
  /** Every further time that the bit is put in. */
  readonly againTicks: number;
};

/** Up to so many set-ups of one bit the shortest ways through them are exact. */
const EXACT_TO = 10;

/**
 * Bounds for each block, so that for any order of the day the sum over blocks of `firstTicks + (times put in − 1) · againTicks`, and the
 * moves, is no more than what it costs. Yields between pieces of work.
 */
export function* blockCosts(problem: DayProblem): Steps<BlockCosts[]> {
  const costs: BlockCosts[] = [];
  for (const block of problem.blocks) {
    const entryTicks = leastEntryTicks(problem, block);
    costs.push(
      block.length <= EXACT_TO
        ? asLine(yield* visitsTicks(problem, block, entryTicks), block.length)
        : byTree(problem, block, entryTicks),
    );
    yield;
  }
  return costs;
}

/** The steepest line, not falling, that stays under what so many visits cost, from the fewest that are possible on. */
function asLine(ticksOfVisits: readonly number[], most: number): BlockCosts {
  const possible = [...ticksOfVisits.entries()].filter(([, ticks]) => Number.isFinite(ticks));
  const [[fewest, fewestTicks] = [1, 0], ...more] = possible;
  const slopes = more.map(([visits, ticks]) => (ticks - fewestTicks) / (visits - fewest));
  return line(fewest, fewestTicks, slopes.length === 0 ? fewestTicks / fewest : Math.min(...slopes), most);
}

/**
 * The set-ups in the order they are done are one way through all of them, no lighter than the lightest tree. Where another bit comes
 * between, the way is broken: that leaves out one change inside, and puts the bit in once more.
 */
function byTree(problem: DayProblem, block: readonly number[], entryTicks: number): BlockCosts {
  const greatestTicks = Math.max(
    ...block.flatMap((from) => block.map((to) => problem.changeTicks[from]?.[to] ?? 0)),
  );
  return line(1, entryTicks + treeTicks(problem, block), entryTicks - greatestTicks, block.length);
}

/** `ticks` for `visits`, and a slope for each further one; if it falls, level at what the most visits would cost. */
function line(visits: number, ticks: number, slope: number, most: number): BlockCosts {
  if (slope < 0) return { firstTicks: Math.max(0, ticks + slope * (most - visits)), againTicks: 0 };
  return { firstTicks: ticks - slope * (visits - 1), againTicks: slope };
}

/** The least that any set-up of the block costs at an empty station or after another bit. */
function leastEntryTicks(
  { atStation, stationOf, firstTicks, changeTicks }: DayProblem,
  block: readonly number[],
): number {
  const others = (atStation[stationOf[block[0] ?? 0] ?? 0] ?? []).filter((place) => !block.includes(place));
  return Math.min(
    ...block.flatMap((to) => [firstTicks[to] ?? 0, ...others.map((from) => changeTicks[from]?.[to] ?? 0)]),
  );
}

/** The weight of the lightest tree that joins the set-ups of the block (Prim 1957). */
function treeTicks({ changeTicks }: DayProblem, block: readonly number[]): number {
  const [start = 0, ...rest] = block;
  const eitherTicks = (one: number, other: number) =>
    Math.min(changeTicks[one]?.[other] ?? 0, changeTicks[other]?.[one] ?? 0);
  const distance = new Map(rest.map((place) => [place, eitherTicks(start, place)]));
  let sum = 0;
  while (distance.size > 0) {
    const [nearest, ticks] = [...distance].reduce((best, each) => (each[1] < best[1] ? each : best));
    sum += ticks;
    distance.delete(nearest);
    for (const [place, known] of distance) distance.set(place, Math.min(known, eitherTicks(nearest, place)));
  }
  return sum;
}
