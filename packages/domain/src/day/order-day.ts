import { allOf, type Steps } from "../quantity/steps.ts";
import { changesAtStation, minutesIn, ticksOf } from "./changes.ts";
import type { Change, ChangeoverTimes, DayOrder, DaySetup, DayStep } from "./day.ts";
import { exactOrder, isExactShort } from "./exact-order.ts";
import { dayProblem, orderTicks } from "./problem.ts";
import { searchedOrder } from "./searched-order.ts";

/**
 * The set-ups of a day in the order that takes the least time of changing over. Each station stays as its last set-up left it; its
 * first set-up needs everything, a new bit its height and fence again, a new setting a test piece, and another station a move. Proven
 * least to twelve set-ups; beyond that a search that ends by itself, with a bound below which no order comes. The same list gives the
 * same order. Times are in minutes. Throws a DomainError for an id that is given twice or unknown (`/1/after/0`), and for a circle of
 * set-ups that wait for each other, named.
 * @example
 * const setup = { station: "table", bitId: "cove", guide: "fence", fenceMm: 4, dial: 2, after: [] };
 * const day = orderDay(
 *   [
 *     { ...setup, id: "rails", heightMm: 9 },
 *     { ...setup, id: "stiles", heightMm: 6 },
 *     { ...setup, id: "doors", heightMm: 9, after: ["stiles"] },
 *   ],
 *   DEFAULT_POLICY,
 * );
 * day.order.map(({ setupId }) => setupId) // → ["stiles", "rails", "doors"]
 */
export function orderDay(setups: readonly DaySetup[], times: ChangeoverTimes): DayOrder {
  return allOf(orderDaySteps(setups, times));
}

/**
 * The same as `orderDay`, piece by piece: it yields after every few milliseconds of work, so that others can have their turn, and
 * returns the order at the end.
 * @example
 * const steps = orderDaySteps([], DEFAULT_POLICY);
 * steps.next() // → { done: true }
 */
export function* orderDaySteps(setups: readonly DaySetup[], times: ChangeoverTimes): Steps<DayOrder> {
  if (setups.length === 0) return { order: [], changeoverMin: 0, lowerBoundMin: 0, isProvenLeast: true };
  const problem = yield* dayProblem(setups, times);
  const { order, boundTicks } = isExactShort(problem)
    ? { order: yield* exactOrder(problem), boundTicks: undefined }
    : yield* searchedOrder(problem);
  const ticks = orderTicks(problem, order);
  const leastTicks = boundTicks ?? ticks;
  return {
    order: stepsOf(setups, order, times),
    changeoverMin: minutesIn(ticks),
    lowerBoundMin: minutesIn(leastTicks),
    isProvenLeast: ticks <= leastTicks,
  };
}

function stepsOf(setups: readonly DaySetup[], order: readonly number[], times: ChangeoverTimes): DayStep[] {
  const lastAt = new Map<string, DaySetup>();
  let here: string | undefined;
  return order.flatMap((place) => {
    const setup = setups[place];
    if (setup === undefined) return [];
    const { id: setupId, station } = setup;
    const changes: Change[] = changesAtStation(lastAt.get(station), setup, times);
    if (here !== undefined && here !== station) {
      changes.unshift({
        code: "move",
        fromStation: here,
        toStation: station,
        minutes: times.stationMoveMinutes,
      });
    }
    here = station;
    lastAt.set(station, setup);
    return [{ setupId, changes, changeMin: minutesIn(ticksOf(changes)) }];
  });
}
