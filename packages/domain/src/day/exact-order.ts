import type { Steps } from "../quantity/steps.ts";
import type { DayProblem } from "./problem.ts";
import { type StationStates, stateCount, stationStates } from "./station-states.ts";

/** The most states an exact search looks at: what no day of twelve set-ups passes (the most is 114,244, at four stations). */
const STATES_MAX = 120_000;

/** States of what is done between two rests: a few milliseconds. */
const STATES_AT_ONCE = 5000;

/** Whether the exact search of this day is short: always to twelve set-ups, and beyond with few stations. */
export function isExactShort({ atStation }: DayProblem): boolean {
  return statesOf(atStation) * atStation.length <= STATES_MAX;
}

/**
 * The order that costs least; of several the one that takes what was given first as early as it can. Dynamic programming over what is
 * done, each station's last set-up and the station of the last one, from the end of the day back. Yields between pieces of work.
 */
export function* exactOrder(problem: DayProblem): Steps<number[]> {
  const states = statesOf(problem.atStation);
  const search = searchOf(problem, states);
  yield;
  for (let state = states - 1; state >= 0; state -= 1) {
    noteLeast(search, standingAt(search, state));
    if (state % STATES_AT_ONCE === 0) yield;
  }
  const order: number[] = [];
  for (let state = 0, here = 0; order.length < problem.count; ) {
    const best = firstOfLeast(search, standingAt(search, state), here);
    order.push(best.next);
    ({ state, here } = best);
  }
  return order;
}

type Search = {
  readonly problem: DayProblem;
  /** What is done and last at every station is one number, with a digit for each. */
  readonly stations: readonly (StationStates & { readonly stride: number })[];
  /** What must be done before each set-up, as bits. */
  readonly beforeBits: Int32Array;
  /** By `state · stations + the one that is worked at`: what the rest of the day costs at least. */
  readonly leastToGo: Float64Array;
  readonly standing: Standing;
};

/** One state taken apart: the state of each station, and what is done as bits. One for all, for there are many states. */
type Standing = { state: number; done: number; readonly digits: Int32Array; readonly leastAt: Float64Array };

function searchOf(problem: DayProblem, states: number): Search {
  const count = problem.atStation.length;
  let stride = 1;
  const stations = problem.atStation.map((members) => {
    const own = { ...stationStates(members), stride };
    stride *= own.count;
    return own;
  });
  return {
    problem,
    stations,
    beforeBits: Int32Array.from(problem.before, (places) =>
      [...places].reduce((bits, place) => bits | (1 << place), 0),
    ),
    leastToGo: new Float64Array(states * count),
    standing: { state: 0, done: 0, digits: new Int32Array(count), leastAt: new Float64Array(count) },
  };
}

function standingAt({ stations, standing }: Search, state: number): Standing {
  standing.state = state;
  standing.done = 0;
  let rest = state;
  for (let station = 0; station < stations.length; station += 1) {
    const own = stations[station];
    if (own === undefined) continue;
    const digit = rest % own.count;
    rest = (rest - digit) / own.count;
    standing.digits[station] = digit;
    standing.done |= own.doneBits[digit] ?? 0;
  }
  return standing;
}

/** Notes what the rest of the day costs at least, for each station that may be worked at. */
function noteLeast(search: Search, standing: Standing): void {
  const { problem, stations, leastToGo } = search;
  const { state, done, leastAt } = standing;
  const isWhole = done === 2 ** problem.count - 1;
  let least = isWhole ? 0 : Number.POSITIVE_INFINITY;
  for (let station = 0; station < stations.length; station += 1) {
    let ownLeast = Number.POSITIVE_INFINITY;
    const size = stations[station]?.members.length ?? 0;
    for (let member = 0; member < size; member += 1) {
      const ticks = ticksWith(search, standing, station, member);
      if (ticks < ownLeast) ownLeast = ticks;
    }
    leastAt[station] = ownLeast;
    if (ownLeast < least) least = ownLeast;
  }
  const movingTicks = done === 0 || isWhole ? 0 : problem.moveTicks;
  for (let here = 0; here < stations.length; here += 1) {
    leastToGo[state * stations.length + here] = Math.min(leastAt[here] ?? 0, least + movingTicks);
  }
}

/** What the rest costs with this set-up next, without a move to it; infinite if it may not come next. */
function ticksWith(search: Search, standing: Standing, station: number, member: number): number {
  const { problem, stations, beforeBits, leastToGo } = search;
  const own = stations[station];
  if (own === undefined) return Number.POSITIVE_INFINITY;
  const next = own.members[member] ?? 0;
  const needed = beforeBits[next] ?? 0;
  if (((standing.done >> next) & 1) === 1 || (standing.done & needed) !== needed) {
    return Number.POSITIVE_INFINITY;
  }
  const digit = standing.digits[station] ?? 0;
  const last = own.last[digit] ?? -1;
  const costs = last < 0 ? problem.firstTicks : problem.changeTicks[last];
  const after = stateAfter(standing, own, digit, member);
  return (costs?.[next] ?? 0) + (leastToGo[after * stations.length + station] ?? 0);
}

function stateAfter(
  { state }: Standing,
  { after, members, stride }: Search["stations"][number],
  digit: number,
  member: number,
): number {
  return state + ((after[digit * members.length + member] ?? 0) - digit) * stride;
}

/** The next set-up of the cheapest rest; of several the one given first. */
function firstOfLeast(search: Search, standing: Standing, here: number) {
  const { problem, stations } = search;
  let best = { ticks: Number.POSITIVE_INFINITY, next: -1, state: 0, here: 0 };
  for (const [station, own] of stations.entries()) {
    const movingTicks = standing.done === 0 || station === here ? 0 : problem.moveTicks;
    for (const [member, next] of own.members.entries()) {
      const ticks = ticksWith(search, standing, station, member) + movingTicks;
      if (ticks > best.ticks || (ticks === best.ticks && next > best.next)) continue;
      const state = stateAfter(standing, own, standing.digits[station] ?? 0, member);
      best = { ticks, next, state, here: station };
    }
  }
  return best;
}

function statesOf(atStation: DayProblem["atStation"]): number {
  return atStation.reduce((product, { length }) => product * stateCount(length), 1);
}
