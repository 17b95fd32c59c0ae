import { type Presentation, searchProfile, type WantedPath, wantedFrom } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { type Random, randomFrom } from "../fuzz/random.ts";
import { isMadeOnGrid, sampledWall } from "./brute-force.ts";
import { grazesSurface, pathLeftBy, randomCut } from "./planted.ts";
import { rackOf } from "./search-rack.ts";

/** Wanted profiles tried. A test run takes some, continuous integration more. */
const CASES = Number(process.env["SEARCH_GRID_CASES"] ?? 6);

/** Profiles of one test. */
const CASES_IN_ONE = 20;

const PRESENTATIONS: readonly Presentation[] = [
  { work: "flat", face: "front" },
  { work: "flat", face: "back" },
  { work: "standing", face: "front" },
  { work: "standing", face: "back" },
];

/** What a bit of a rack leaves. The rack that is searched is another one, so that its bits come near only by chance. */
function wantedPath(random: Random): WantedPath {
  const thicknessMm = 12 + random.below(10);
  for (;;) {
    const bit = random.of(rackOf(30, random));
    const cut = randomCut(bit, random.of(PRESENTATIONS), thicknessMm, random);
    const path = cut && pathLeftBy([cut], thicknessMm);
    if (path !== undefined && !grazesSurface(path)) return path;
  }
}

/** The bits and presentations that make a profile, by the grid and by the search. */
function madeBy(seed: number): { readonly onGrid: string[]; readonly found: string[] } {
  const random = randomFrom(1000 + seed);
  const path = wantedPath(random);
  const rack = rackOf(30, random);
  const toleranceMm = random.of([0.3, 0.5, 1]);
  const { oneSetup } = searchProfile(wantedFrom(path), rack, { toleranceMm, setupsMax: 1 });
  const onGrid = PRESENTATIONS.flatMap((presentation) => {
    const wall = sampledWall(presentation, path);
    const making = wall && rack.filter((bit) => isMadeOnGrid(bit, presentation, wall, toleranceMm));
    return (making ?? []).map(({ id }) => `${id} ${presentation.work} ${presentation.face}`);
  });
  return {
    onGrid,
    found: oneSetup.map(({ bitId, presentation: { work, face } }) => `${bitId} ${work} ${face}`),
  };
}

describe("what a grid of all heights finds with one bit", () => {
  it.each(Array.from({ length: Math.ceil(CASES / CASES_IN_ONE) }, (_, block) => [block * CASES_IN_ONE]))(
    "the search finds too (from seed %i)",
    (from) => {
      const count = Math.min(CASES_IN_ONE, CASES - from);
      const seeds = Array.from({ length: count }, (_, index) => ({
        seed: from + index,
        ...madeBy(from + index),
      }));
      const missed = seeds.flatMap(({ seed, onGrid, found }) =>
        onGrid.filter((each) => !found.includes(each)).map((each) => `seed ${seed}: ${each}`),
      );
      expect(missed).toEqual([]);
      // And the grid found something to compare.
      expect(seeds.flatMap(({ onGrid }) => onGrid).length).toBeGreaterThan(0);
    },
  );
});
