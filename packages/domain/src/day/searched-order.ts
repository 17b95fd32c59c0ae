import type { Steps } from "../quantity/steps.ts";
import { improved } from "./improve.ts";
import type { DayProblem } from "./problem.ts";
import { fewestVisits } from "./visits.ts";

/** A good order of a day that is too long for the exact search, and a bound below which none costs. Yields between pieces of work. */
export function* searchedOrder(
  problem: DayProblem,
): Steps<{ readonly order: number[]; readonly boundTicks: number }> {
  const { order, boundTicks } = yield* fewestVisits(problem);
  return { order: yield* improved(problem, completed(problem, order), boundTicks), boundTicks };
}

/** What a search left open is done at the cheapest next set-up each time. */
function completed(
  { count, before, stationOf, changeTicks, firstTicks, moveTicks }: DayProblem,
  start: readonly number[],
): number[] {
  const order = [...start];
  const done = new Set(order);
  const lastAt = new Map(order.map((place) => [stationOf[place], place]));
  while (order.length < count) {
    let best = { ticks: Number.POSITIVE_INFINITY, place: -1 };
    for (let place = 0; place < count; place += 1) {
      if (done.has(place) || ![...(before[place] ?? [])].every((each) => done.has(each))) continue;
      const last = lastAt.get(stationOf[place]);
      const here = stationOf[order.at(-1) ?? place];
      const ticks =
        ((last === undefined ? firstTicks[place] : changeTicks[last]?.[place]) ?? 0) +
        (here === stationOf[place] ? 0 : moveTicks);
      if (ticks < best.ticks) best = { ticks, place };
    }
    order.push(best.place);
    done.add(best.place);
    lastAt.set(stationOf[best.place], best.place);
  }
  return order;
}
