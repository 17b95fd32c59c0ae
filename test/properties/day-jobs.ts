import type { DaySetup } from "@rimwise/domain";
import type { Random } from "../fuzz/random.ts";

const STATIONS = ["router table", "second table", "by hand"] as const;
const GUIDES = ["fence", "bearing", "sled"] as const;

/** Any few set-ups, of which some wait for others: at up to three stations, alike or not. */
export function anyDay(random: Random, most: number): DaySetup[] {
  const stations = 1 + random.below(3);
  const waitChance = random.of([0, 10, 20, 40]);
  return Array.from({ length: 1 + random.below(most) }, (_, place) => ({
    id: `set-up ${place}`,
    station: STATIONS[random.below(stations)] ?? "by hand",
    bitId: random.of(["straight", "cove", "dovetail"]),
    guide: random.percent(80) ? random.of(GUIDES) : undefined,
    heightMm: random.of([6, 9, 12.7]),
    fenceMm: random.percent(70) ? random.of([0, 4.5]) : undefined,
    dial: random.percent(80) ? random.of([1, 2, "C"]) : undefined,
    after: Array.from({ length: place }, (_, earlier) => earlier)
      .filter(() => random.percent(waitChance))
      .map((earlier) => `set-up ${earlier}`),
  })).sort(() => random.below(3) - 1);
}

/**
 * A day of a joiner's shop: bits of a router table, a second table and a router by hand, each at a few heights and fences, and parts that
 * go from one to the next: waste before undercut, cope before stick, edges last. Every sixth set-up comes late all the same, such as a
 * rabbet for hinges with the bit that wasted the grooves.
 */
export function shopDay(random: Random, count: number): DaySetup[] {
  const bits = Array.from({ length: 6 + random.below(7) }, (_, bit) => ({
    bitId: `bit ${bit}`,
    stage: random.below(7),
    station: random.of(STATIONS),
    guide: random.of(GUIDES),
    dial: 1 + random.below(5),
    heightsMm: [6, 9.5, 12.7, 19].slice(0, 1 + random.below(4)),
    fencesMm: [0, 4, 8, 11].slice(0, 1 + random.below(4)),
  }));
  const all = bits.flatMap((bit) =>
    bit.heightsMm.flatMap((heightMm) => bit.fencesMm.map((fenceMm) => ({ ...bit, heightMm, fenceMm }))),
  );
  if (all.length < count) return shopDay(random, count);
  while (all.length > count) all.splice(random.below(all.length), 1);
  const setups = all.map((each, place) => ({
    ...each,
    id: `set-up ${place}`,
    stage: each.stage + (random.percent(17) ? 5 : 0),
    after: new Set<string>(),
  }));
  for (let part = 0; part < count / 2; part += 1) {
    const route = Array.from({ length: 2 + random.below(4) }, () => random.of(setups));
    route.sort((one, other) => one.stage - other.stage);
    for (const [index, next] of route.entries()) {
      const last = route[index - 1];
      if (last !== undefined && last.stage < next.stage) next.after.add(last.id);
    }
  }
  return setups.map(({ id, station, bitId, guide, heightMm, fenceMm, dial, after }) => ({
    id,
    station,
    bitId,
    guide,
    heightMm,
    fenceMm,
    dial,
    after: [...after],
  }));
}
