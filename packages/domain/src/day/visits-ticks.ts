import type { Steps } from "../quantity/steps.ts";
import type { DayProblem } from "./problem.ts";

/** States between two rests: a few milliseconds. */
const STATES_AT_ONCE = 20_000;

/**
 * By how often the bit is put in: the least that all set-ups of its block cost then, infinite if it must be put in more often. Each comes
 * after what it waits for, and another bit comes between two of which one waits for the other by way of it. Exact, by dynamic programming
 * over what is done and the last one (Held and Karp 1962). Yields between pieces of work.
 */
export function* visitsTicks(
  problem: DayProblem,
  block: readonly number[],
  entryTicks: number,
): Steps<number[]> {
  const size = block.length;
  const whole = 2 ** size - 1;
  const needed = block.map((place) =>
    block.reduce((bits, other, bit) => (problem.before[place]?.has(other) ? bits | (1 << bit) : bits), 0),
  );
  const insideTicks = block.map((from) =>
    block.map((to) =>
      mustBreak(problem, from, to) ? Number.POSITIVE_INFINITY : (problem.changeTicks[from]?.[to] ?? 0),
    ),
  );
  const result = [Number.POSITIVE_INFINITY];
  let least = new Float64Array((whole + 1) * size).fill(Number.POSITIVE_INFINITY);
  for (const [bit, need] of needed.entries()) if (need === 0) least[(1 << bit) * size + bit] = entryTicks;
  for (let visits = 1; visits <= size; visits += 1) {
    const oneMore = new Float64Array(least.length).fill(Number.POSITIVE_INFINITY);
    for (let state = size; state < whole * size; state += 1) {
      const ticks = least[state] ?? 0;
      const [done, last] = [Math.floor(state / size), state % size];
      for (let next = 0; next < size && ticks < Number.POSITIVE_INFINITY; next += 1) {
        const need = needed[next] ?? 0;
        if ((done & (1 << next)) !== 0 || (done & need) !== need) continue;
        const after = (done | (1 << next)) * size + next;
        least[after] = Math.min(least[after] ?? 0, ticks + (insideTicks[last]?.[next] ?? 0));
        oneMore[after] = Math.min(oneMore[after] ?? 0, ticks + entryTicks);
      }
      if (state % STATES_AT_ONCE === 0) yield;
    }
    result.push(Math.min(...least.subarray(whole * size)));
    least = oneMore;
  }
  return result;
}

/** Whether another bit must come between two set-ups of a block: the later one waits for the earlier by way of it, at their station. */
export function mustBreak(
  { before, stationOf, blockOf }: DayProblem,
  earlier: number,
  later: number,
): boolean {
  for (const between of before[later] ?? []) {
    const isHere = stationOf[between] === stationOf[later] && blockOf[between] !== blockOf[later];
    if (isHere && before[between]?.has(earlier)) return true;
  }
  return false;
}
