import { type Presentation, searchProfile, type WantedPath, wantedFrom } from "@rimwise/domain";
import { expect, it } from "vitest";
import { type Random, randomFrom } from "../fuzz/random.ts";
import { isMadeOnGrid, sampledWall } from "./brute-force.ts";
import { grazesSurface, pathLeftBy, randomCut } from "./planted.ts";
import { rackOf } from "./search-rack.ts";

/** Wanted profiles tried. A test run takes some, continuous integration more. */
const CASES = Number(process.env["SEARCH_GRID_CASES"] ?? 6);

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

it("what a grid of all heights finds with one bit, the search finds too", () => {
  const seeds = Array.from({ length: CASES }, (_, seed) => ({ seed, ...madeBy(seed) }));
  const missed = seeds.flatMap(({ seed, onGrid, found }) =>
    onGrid.filter((each) => !found.includes(each)).map((each) => `seed ${seed}: ${each}`),
  );
  expect(missed).toEqual([]);
  // And the grid found something to compare.
  expect(seeds.flatMap(({ onGrid }) => onGrid).length).toBeGreaterThan(seeds.length);
});
