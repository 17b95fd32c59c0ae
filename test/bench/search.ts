import { searchProfile, type WantedPath, wantedFrom } from "@rimwise/domain";
import { randomFrom } from "../fuzz/random.ts";
import { type Cut, grazesSurface, pathLeftBy, randomCut } from "../reference/planted.ts";
import { rackOf } from "../reference/search-rack.ts";

const RACK = 1000;
const THICKNESS_MM = 19;
const TOLERANCE_MM = 0.1;
/** So many bits that were not taken does the service explain. */
const SHOWN = 50;

/** Profiles of each kind, and runs of each of which the median counts. */
const PROFILES = 15;
const RUNS = 5;

/** A rack of 1,000 bits, searched for profiles that one of its bits, or three together, are known to make. */
export async function benchSearch(): Promise<string> {
  const random = randomFrom(1);
  const rack = rackOf(RACK, random);
  const path = (count: number): WantedPath => {
    const cuts: Cut[] = [];
    while (cuts.length < count) {
      const presentation = { work: "flat", face: random.of(["front", "back"] as const) } as const;
      const cut = randomCut(random.of(rack), presentation, THICKNESS_MM, random);
      if (cut !== undefined) cuts.push(cut);
    }
    const left = pathLeftBy(cuts, THICKNESS_MM);
    return grazesSurface(left) ? path(count) : left;
  };
  const rows = ([1, 3] as const).map((setupsMax) => {
    const wanted = Array.from({ length: PROFILES }, () => wantedFrom(path(setupsMax)));
    const search = (index: number) => {
      const profile = wanted[index];
      return (
        profile && searchProfile(profile, rack, { toleranceMm: TOLERANCE_MM, setupsMax, notTakenMost: SHOWN })
      );
    };
    const several = wanted.filter((_, index) => search(index)?.oneSetup.length === 0).length;
    const medians = wanted.map((_, index) =>
      median(Array.from({ length: RUNS }, () => timed(() => search(index)))),
    );
    const name = setupsMax === 1 ? "one set-up" : `up to three (${several} need more than one)`;
    return `  ${name.padEnd(36)} ${median(medians).toFixed(0).padStart(5)} ms   ${Math.max(...medians)
      .toFixed(0)
      .padStart(5)} ms`;
  });
  return [
    `Search of ${RACK} bits for a profile, ${PROFILES} profiles, each the median of ${RUNS} runs: the middle one and the slowest`,
    ...rows,
  ].join("\n");
}

function timed(run: () => unknown): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
