import { type DayOrder, type DaySetup, DEFAULT_POLICY, orderDay } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { randomFrom } from "../fuzz/random.ts";
import { anyDay, shopDay } from "./day-jobs.ts";
import { leastMinutes } from "./least-minutes.ts";

/** Days of 40 set-ups, at some 100 ms each. */
const SHOP_DAYS = Number(process.env["SHOP_DAYS"] ?? 10);

const seeds = (count: number) => Array.from({ length: count }, (_, seed) => seed);
const idsOf = ({ order }: DayOrder) => order.map(({ setupId }) => setupId);

function expectKept(setups: readonly DaySetup[], day: DayOrder): void {
  const placeOf = new Map(idsOf(day).map((id, place) => [id, place]));
  expect(placeOf.size).toBe(setups.length);
  expect(day.order).toHaveLength(setups.length);
  for (const { id, after } of setups) {
    for (const earlier of after) expect(placeOf.get(earlier)).toBeLessThan(placeOf.get(id) ?? -1);
  }
  const minutes = day.order.flatMap(({ changes }) => changes.map((change) => change.minutes));
  expect(day.changeoverMin).toBeCloseTo(
    minutes.reduce((sum, each) => sum + each, 0),
    6,
  );
  expect(day.lowerBoundMin).toBeLessThanOrEqual(day.changeoverMin);
  expect(day.isProvenLeast).toBe(day.lowerBoundMin === day.changeoverMin);
}

describe("the order of a day", () => {
  it("costs what the best of all orders costs, on 500 random days of up to 9 set-ups", () => {
    for (const seed of seeds(500)) {
      const setups = anyDay(randomFrom(seed), 9);
      const day = orderDay(setups, DEFAULT_POLICY);
      expectKept(setups, day);
      expect(day.isProvenLeast).toBe(true);
      expect(day.changeoverMin, `seed ${seed}`).toBeCloseTo(leastMinutes(setups, DEFAULT_POLICY), 6);
    }
  });

  it("is bounded by what no order beats, on long days of which the least is known", () => {
    let gap = 0;
    for (const seed of seeds(25)) {
      const setups = anyDay(randomFrom(seed), 8);
      // Then one set-up at each of twelve more stations, one after the other: each costs all, and a move.
      const { bitChangeMinutes, heightSettingMinutes, testPieceMinutes, stationMoveMinutes } = DEFAULT_POLICY;
      const each = bitChangeMinutes + heightSettingMinutes + testPieceMinutes + stationMoveMinutes;
      const later = Array.from({ length: 12 }, (_, index): DaySetup => {
        const after = index === 0 ? setups.map(({ id }) => id) : [`later ${index - 1}`];
        const bare = { guide: undefined, fenceMm: undefined, dial: undefined };
        return { id: `later ${index}`, station: `station ${index}`, bitId: "v", heightMm: 3, ...bare, after };
      });
      const least = leastMinutes(setups, DEFAULT_POLICY) + 12 * each;
      const day = orderDay([...setups, ...later], DEFAULT_POLICY);
      expectKept([...setups, ...later], day);
      expect(day.lowerBoundMin, `seed ${seed}`).toBeLessThanOrEqual(least + 1e-9);
      expect(day.changeoverMin, `seed ${seed}`).toBeCloseTo(least, 6);
      gap = Math.max(gap, 1 - day.lowerBoundMin / least);
    }
    expect(gap).toBeLessThan(0.2);
  });

  it(`comes within 5 % of its bound, on ${SHOP_DAYS} days of 40 set-ups in a joiner's shop`, () => {
    for (const seed of seeds(SHOP_DAYS)) {
      const setups = shopDay(randomFrom(seed), 40);
      const day = orderDay(setups, DEFAULT_POLICY);
      expectKept(setups, day);
      expect(day.changeoverMin / day.lowerBoundMin, `seed ${seed}`).toBeLessThan(1.05);
    }
  });

  it("is the same under other names, and costs the same when the list is shuffled", () => {
    const renamed = (name: string) => `${name.length}: ${[...name].reverse().join("")}`;
    for (const seed of seeds(25)) {
      const setups = anyDay(randomFrom(seed), 9);
      const day = orderDay(setups, DEFAULT_POLICY);
      const others = setups.map((setup) => ({
        ...setup,
        id: renamed(setup.id),
        station: renamed(setup.station),
        bitId: renamed(setup.bitId),
        after: setup.after.map(renamed).reverse(),
      }));
      expect(idsOf(orderDay(others, DEFAULT_POLICY))).toEqual(idsOf(day).map(renamed));
      expect(orderDay([...setups].reverse(), DEFAULT_POLICY).changeoverMin).toBe(day.changeoverMin);
    }
  });

  it("never gets cheaper when a set-up must wait for one more, or dearer when one waits for one less", () => {
    for (const seed of seeds(100)) {
      const setups = anyDay(randomFrom(seed), 9);
      const free = setups.map((setup, place) => (place % 2 === 0 ? { ...setup, after: [] } : setup));
      const freeMin = orderDay(free, DEFAULT_POLICY).changeoverMin;
      expect(freeMin).toBeLessThanOrEqual(orderDay(setups, DEFAULT_POLICY).changeoverMin);
    }
  });
});
