import type { DayProblem } from "./problem.ts";

/** An order and what it costs, ready to be asked what it would cost with some of it changed. */
export type CostedOrder = {
  readonly order: Int32Array;
  readonly ticks: number;
  /** What an order costs that has the same set-ups up to `from` and from `to` on. Exact if it is less than this order; else not less. */
  readonly ticksWith: (tried: Int32Array, from: number, to: number) => number;
};

/** Knows how the day stands before each place of the order, so that only what changes is looked at. */
export function costedOrder(problem: DayProblem, order: Int32Array): CostedOrder {
  const { count, stationOf, moveTicks, atStation } = problem;
  const stations = atStation.length;
  // How the day stands before each place: what it cost so far, and each station's last set-up.
  const ticksBefore = new Float64Array(count + 1);
  const lastBefore = new Int32Array((count + 1) * stations).fill(-1);
  for (let place = 0; place < count; place += 1) {
    const next = order[place] ?? 0;
    const station = stationOf[next] ?? 0;
    const was = place * stations;
    const before = order[place - 1];
    ticksBefore[place + 1] =
      (ticksBefore[place] ?? 0) +
      changeTicks(problem, lastBefore[was + station] ?? -1, next) +
      (before === undefined || stationOf[before] === station ? 0 : moveTicks);
    lastBefore.copyWithin(was + stations, was, was + stations);
    lastBefore[was + stations + station] = next;
  }
  const ticks = ticksBefore[count] ?? 0;
  const last = new Int32Array(stations);
  return {
    order,
    ticks,
    ticksWith: (tried, from, to) => {
      for (let station = 0; station < stations; station += 1) {
        last[station] = lastBefore[from * stations + station] ?? -1;
      }
      let here = from === 0 ? -1 : (stationOf[tried[from - 1] ?? 0] ?? 0);
      let sum = ticksBefore[from] ?? 0;
      for (let place = from; place < count; place += 1) {
        if (place >= to && isAsBefore(place, here)) return sum + ticks - (ticksBefore[place] ?? 0);
        const next = tried[place] ?? 0;
        const station = stationOf[next] ?? 0;
        sum += changeTicks(problem, last[station] ?? -1, next);
        if (here >= 0 && here !== station) sum += moveTicks;
        if (sum >= ticks) return sum;
        last[station] = next;
        here = station;
      }
      return sum;
    },
  };

  function isAsBefore(place: number, here: number): boolean {
    if (stationOf[order[place - 1] ?? 0] !== here) return false;
    for (let station = 0; station < stations; station += 1) {
      if (last[station] !== lastBefore[place * stations + station]) return false;
    }
    return true;
  }
}

function changeTicks({ firstTicks, changeTicks: rows }: DayProblem, last: number, next: number): number {
  return (last < 0 ? firstTicks[next] : rows[last]?.[next]) ?? 0;
}
