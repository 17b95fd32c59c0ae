import type { Steps } from "../quantity/steps.ts";
import { type CostedOrder, costedOrder } from "./costed-order.ts";
import type { DayProblem } from "./problem.ts";

/** Set-ups and stations looked at in all while orders are compared: some 100 ms. */
const LOOKED_AT_MAX = 2_000_000;

/** Set-ups and stations looked at between two rests: a few milliseconds. */
const LOOKED_AT_ONCE = 50_000;

/** The longest stretch that is moved as one. */
const LONGEST_STRETCH = 12;

/** Stretches moved at random to leave an order that no single move makes better. */
const SHAKES = 3;

/**
 * An order made better by moving stretches of it, until no move helps, then again from a shaken one, until it costs no more than the bound
 * or enough was tried. No set-up ever passes one that it waits for. The randomness has one seed: the same order gives the same.
 */
export function* improved(
  problem: DayProblem,
  start: readonly number[],
  boundTicks: number,
): Steps<number[]> {
  const random = seededRandom();
  const spent: Spent = { lookedAt: 0, restAt: LOOKED_AT_ONCE };
  let best = yield* withoutBetterMove(problem, Int32Array.from(start), spent);
  while (best.ticks > boundTicks && spent.lookedAt < LOOKED_AT_MAX) {
    const shakenOrder = shaken(problem, best.order, random);
    spent.lookedAt += SHAKES * start.length;
    const tried = yield* withoutBetterMove(problem, shakenOrder, spent);
    if (tried.ticks <= best.ticks) best = tried;
  }
  return [...best.order];
}

type Spent = { lookedAt: number; restAt: number };

function* withoutBetterMove(problem: DayProblem, start: Int32Array, spent: Spent): Steps<CostedOrder> {
  let costed = costedOrder(problem, start);
  spent.lookedAt += start.length * problem.atStation.length;
  for (let isBetter = true; isBetter; ) {
    isBetter = false;
    for (let length = 1; length <= Math.min(LONGEST_STRETCH, start.length - 1); length += 1) {
      for (let from = 0; from + length <= start.length; from += 1) {
        const better = betterMove(problem, costed, { from, length }, spent);
        if (better !== undefined) {
          costed = costedOrder(problem, better);
          isBetter = true;
        }
        if (spent.lookedAt > LOOKED_AT_MAX) return costed;
        if (spent.lookedAt > spent.restAt) {
          spent.restAt = spent.lookedAt + LOOKED_AT_ONCE;
          yield;
        }
      }
    }
  }
  return costed;
}

type Stretch = { readonly from: number; readonly length: number };

/** The first order that costs less with this stretch moved on, or back; undefined if none does. */
function betterMove(
  problem: DayProblem,
  costed: CostedOrder,
  stretch: Stretch,
  spent: Spent,
): Int32Array | undefined {
  const { from, length } = stretch;
  spent.lookedAt += costed.order.length;
  for (const way of [1, -1] as const) {
    const tried = costed.order.slice();
    for (let at = from; slide(problem, tried, at, length, way); ) {
      at += way;
      const first = Math.min(from, at);
      const after = Math.max(from, at) + length;
      spent.lookedAt += after - first + problem.atStation.length;
      if (costed.ticksWith(tried, first, after) < costed.ticks) return tried;
    }
  }
  return undefined;
}

/** Moves the stretch at a place one on or back, if nothing in it must stay before or after what it passes. */
function slide(
  { waitsFor, count }: DayProblem,
  order: Int32Array,
  at: number,
  length: number,
  way: 1 | -1,
): boolean {
  const passedAt = way === 1 ? at + length : at - 1;
  const passed = order[passedAt];
  if (passed === undefined) return false;
  for (let place = at; place < at + length; place += 1) {
    const each = order[place] ?? 0;
    const [later, earlier] = way === 1 ? [passed, each] : [each, passed];
    if (waitsFor[later * count + earlier] === 1) return false;
  }
  if (way === 1) order.copyWithin(at + 1, at, at + length);
  else order.copyWithin(passedAt, at, at + length);
  order[way === 1 ? at : at + length - 1] = passed;
  return true;
}

function shaken(problem: DayProblem, order: Int32Array, random: (below: number) => number): Int32Array {
  const result = order.slice();
  for (let shake = 0; shake < SHAKES; shake += 1) {
    const length = 1 + random(Math.min(LONGEST_STRETCH, order.length - 1));
    const way = random(2) === 0 ? 1 : -1;
    let at = random(order.length - length + 1);
    for (let by = random(order.length); by > 0 && slide(problem, result, at, length, way); by -= 1) at += way;
  }
  return result;
}

/** Whole numbers from 0 to below a bound: a linear congruential generator (Numerical Recipes: 1664525, 1013904223). */
function seededRandom(): (below: number) => number {
  let state = 1;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}
