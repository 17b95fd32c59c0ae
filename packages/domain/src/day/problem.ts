import { DomainError, type Fault } from "../quantity/fault.ts";
import type { Steps } from "../quantity/steps.ts";
import { changesAtStation, ticksIn, ticksOf } from "./changes.ts";
import type { ChangeoverTimes, DaySetup } from "./day.ts";

/** A day by the places of its set-ups in the list, from 0. Times are whole thousandths of a minute. */
export type DayProblem = {
  readonly count: number;
  /** The station of each set-up, and the set-ups of each station in the order given. */
  readonly stationOf: readonly number[];
  readonly atStation: readonly (readonly number[])[];
  /** The set-ups of one bit at one station, and which of these blocks each set-up is in. */
  readonly blocks: readonly (readonly number[])[];
  readonly blockOf: readonly number[];
  /** What must be finished before each set-up, directly or by way of others. */
  readonly before: readonly ReadonlySet<number>[];
  /** By `later · count + earlier`: 1 if the one waits for the other, directly or by way of others. */
  readonly waitsFor: Uint8Array;
  /** What each set-up costs at a station where nothing is set up yet. */
  readonly firstTicks: readonly number[];
  /** `changeTicks[a][b]`: what b costs right after a at their station. Of set-ups of two stations it means nothing. */
  readonly changeTicks: readonly Float64Array[];
  readonly moveTicks: number;
};

/** A day as numbers. Yields between pieces of work. Throws a DomainError with every id that is wrong, or with a circle of waiting. */
export function* dayProblem(setups: readonly DaySetup[], times: ChangeoverTimes): Steps<DayProblem> {
  const placeOf = new Map(setups.map(({ id }, place) => [id, place] as const).reverse());
  const faults = idFaults(setups, placeOf);
  if (faults.length > 0) throw new DomainError(faults);
  const directly = setups.map(({ after }) => after.map((id) => placeOf.get(id) ?? -1));
  const before = yield* closure(setups, directly);
  const stations = [...new Set(setups.map(({ station }) => station))];
  const stationOf = setups.map(({ station }) => stations.indexOf(station));
  const atStation = stations.map((_, station) => placesOf(stationOf, station));
  const bits = [...new Set(setups.map(blockKey))];
  const blockOf = setups.map((setup) => bits.indexOf(blockKey(setup)));
  const changeTicks: Float64Array[] = [];
  for (const [place, last] of setups.entries()) {
    const row = new Float64Array(setups.length);
    for (const next of atStation[stationOf[place] ?? -1] ?? []) {
      const setup = setups[next];
      if (setup !== undefined) row[next] = ticksOf(changesAtStation(last, setup, times));
    }
    changeTicks.push(row);
    yield;
  }
  return {
    count: setups.length,
    stationOf,
    atStation,
    blocks: bits.map((_, block) => placesOf(blockOf, block)),
    blockOf,
    before,
    waitsFor: waits(before),
    firstTicks: setups.map((setup) => ticksOf(changesAtStation(undefined, setup, times))),
    changeTicks,
    moveTicks: ticksIn(times.stationMoveMinutes),
  };
}

/** What an order of places costs, in thousandths of a minute. */
export function orderTicks(problem: DayProblem, order: readonly number[]): number {
  const { stationOf, firstTicks, changeTicks, moveTicks, atStation } = problem;
  const lastAt: number[] = atStation.map(() => -1);
  let here = -1;
  let ticks = 0;
  for (const next of order) {
    const station = stationOf[next] ?? 0;
    const last = lastAt[station] ?? -1;
    ticks += (last < 0 ? firstTicks[next] : changeTicks[last]?.[next]) ?? 0;
    if (here >= 0 && here !== station) ticks += moveTicks;
    lastAt[station] = next;
    here = station;
  }
  return ticks;
}

function idFaults(setups: readonly DaySetup[], placeOf: ReadonlyMap<string, number>): Fault[] {
  return setups.flatMap(({ id, after }, place): Fault[] => [
    ...(placeOf.get(id) === place
      ? []
      : [{ pointer: `/${place}/id`, code: "id-given-twice", values: { given: id } } as const]),
    ...after.flatMap((given, index): Fault[] =>
      placeOf.has(given)
        ? []
        : [{ pointer: `/${place}/after/${index}`, code: "unknown-set-up", values: { given } }],
    ),
  ]);
}

/** Everything that comes before each set-up. Whoever waits is looked at after what it waits for. */
function* closure(
  setups: readonly DaySetup[],
  directly: readonly (readonly number[])[],
): Steps<ReadonlySet<number>[]> {
  const whole: (Set<number> | undefined)[] = setups.map(() => undefined);
  for (const start of setups.keys()) {
    // A path of what waits for the next one on it, each with how many of its own it has seen.
    const path = [{ place: start, seen: 0 }];
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const waitsFor = directly[top.place] ?? [];
      const next = waitsFor[top.seen];
      if (whole[top.place] !== undefined || next === undefined) {
        whole[top.place] ??= new Set(waitsFor.flatMap((each) => [each, ...(whole[each] ?? [])]));
        path.pop();
        yield;
        continue;
      }
      top.seen += 1;
      const circleFrom = path.findIndex(({ place }) => place === next);
      if (circleFrom >= 0)
        throw circleError(
          setups,
          path.slice(circleFrom).map(({ place }) => place),
        );
      path.push({ place: next, seen: 0 });
    }
  }
  return whole.map((each) => each ?? new Set());
}

function waits(before: readonly ReadonlySet<number>[]): Uint8Array {
  const waitsFor = new Uint8Array(before.length * before.length);
  for (const [later, places] of before.entries()) {
    for (const earlier of places) waitsFor[later * before.length + earlier] = 1;
  }
  return waitsFor;
}

function circleError(setups: readonly DaySetup[], circle: readonly number[]): DomainError {
  const pointer = `/${circle[0] ?? 0}/after`;
  const setupIds = circle.map((place) => setups[place]?.id ?? "");
  return new DomainError([{ pointer, code: "set-ups-in-circle", values: { setupIds } }]);
}

function blockKey({ station, bitId }: DaySetup): string {
  return JSON.stringify([station, bitId]);
}

function placesOf(groupOf: readonly number[], group: number): number[] {
  return [...groupOf.keys()].filter((place) => groupOf[place] === group);
}
