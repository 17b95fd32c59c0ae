import { searchProfile, type WantedPath, wantedFrom } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { type Random, randomFrom } from "../fuzz/random.ts";
import { answersOf, checkCuts, cutsOf } from "./cut-check.ts";
import { type Cut, grazesSurface, pastMm, pathLeftBy, randomCut } from "./planted.ts";
import { rackOf } from "./search-rack.ts";

/** Profiles that settings of a rack are known to make. A test run takes some of them, continuous integration 2,000. */
const CASES = Number(process.env["SEARCH_CASES"] ?? 40);

/** Cases of one test, which share a rack. */
const CASES_IN_ONE = 20;

const RACK = 120;
const TOLERANCE_MM = 0.1;

/** Of a search's answers so many are looked at with polygons. */
const LOOKED_AT = 4;

/** Arcs are drawn with chords here and corners are typed to hundredths: both together are well within this, mm. */
const DRAWN_WITHIN_MM = 0.005;

/** The most that is rounding, mm: a gouge is none. */
const ROUNDING_MM = 1e-6;

type Case = { readonly cuts: readonly Cut[]; readonly path: WantedPath };

/** One to three cuts at random settings, the work flat on either face, or standing with one face to the fence. */
function planted(rack: ReturnType<typeof rackOf>, random: Random): Case {
  const thicknessMm = 12 + random.below(19);
  const work = random.of(["flat", "flat", "standing"] as const);
  const standsOn = random.of(["front", "back"] as const);
  const count = 1 + random.below(3);
  const cuts: Cut[] = [];
  while (cuts.length < count) {
    const face = work === "flat" ? random.of(["front", "back"] as const) : standsOn;
    const cut = randomCut(random.of(rack), { work, face }, thicknessMm, random);
    if (cut !== undefined) cuts.push(cut);
  }
  const path = pathLeftBy(cuts, thicknessMm);
  return grazesSurface(path) ? planted(rack, random) : { cuts, path };
}

describe("a profile that settings of the rack are known to make", () => {
  it.each(Array.from({ length: Math.ceil(CASES / CASES_IN_ONE) }, (_, seed) => [seed]))(
    "is found within tolerance, without a gouge and with no more set-ups (seed %i)",
    (seed) => {
      const random = randomFrom(seed);
      const rack = rackOf(RACK, random);
      for (let index = 0; index < CASES_IN_ONE; index += 1) {
        const { cuts, path } = planted(rack, random);
        const setupsMax = cuts.length === 1 ? 1 : cuts.length === 2 ? 2 : 3;
        const found = searchProfile(wantedFrom(path), rack, { toleranceMm: TOLERANCE_MM, setupsMax });
        const answers = answersOf(found);
        const what = `case ${index}: ${cuts.map(({ bit }) => bit.id).join(", ")}`;
        expect(answers.length, what).toBeGreaterThan(0);
        for (const settings of answers.slice(0, LOOKED_AT)) {
          expect(settings.length, what).toBeLessThanOrEqual(cuts.length);
          const answer = cutsOf(settings, rack);
          if (answer.every(({ work }) => work === cuts[0]?.work)) {
            expect(pastMm(answer, cuts, path.thicknessMm), what).toBeLessThan(ROUNDING_MM);
          }
          const { gougeMm, leftMm } = checkCuts(path, answer);
          expect(gougeMm, what).toBeLessThan(DRAWN_WITHIN_MM);
          expect(leftMm, what).toBeLessThan(TOLERANCE_MM + DRAWN_WITHIN_MM);
          // What the search says is left is what polygons say.
          expect(Math.abs(leftMm - (settings.at(-1)?.greatestLeftMm ?? 0)), what).toBeLessThan(0.01);
        }
      }
    },
  );
});
