import { expect, test } from "vitest";
import { createJob, kitchenShop } from "./kitchen-shop.ts";

const kitchen = kitchenShop();

type Setup = {
  readonly bitId: string;
  readonly kind: string;
  readonly changeMin: number;
  readonly cuttingMin: number;
  readonly handlingMin: number;
  readonly runs: readonly { name: string; pieces: number; metres: number; secondsPerPiece: number }[];
};

/** Nothing is fed faster by hand than the policy allows, and no end in less than a second: see its rules. */
const CHANGES = { bit: 3, height: 2, fence: 2, dial: 0.2, testPiece: 3 };

test("a kitchen of 24 doors, checked by hand: set-ups, pieces, metres and minutes", async () => {
  const { work } = await createJob(kitchen);
  const { copeId, stickId, panelId } = kitchen.ids;
  const setups: readonly Setup[] = work.setups;
  const of = (bitId: string) => setups.filter((setup) => setup.bitId === bitId);
  const lines = (bitId: string) =>
    of(bitId).map(({ kind, runs }) => [
      kind,
      ...runs.map(({ name, pieces, metres }) => [name, pieces, metres]),
    ]);

  // 48 rails and 4 spare, 57 mm wide: both ends are 2 × 57 mm × 52 = 5.928 m, in each pass.
  expect(lines(copeId)).toEqual([
    ["rough", ["Rail", 52, 5.93]],
    ["finish", ["Rail", 52, 5.93]],
  ]);
  // One side of 52 rails of 300 mm and of 52 stiles of 700 mm: 15.6 m and 36.4 m, at the same setting.
  expect(lines(stickId)).toEqual([
    ["rough", ["Rail", 52, 15.6], ["Stile", 52, 36.4]],
    ["finish", ["Rail", 52, 15.6], ["Stile", 52, 36.4]],
  ]);
  // 24 panels and one spare of 305 × 600 mm, all round: 2 × (305 + 600) mm × 25 = 45.25 m, in each pass.
  for (const { runs } of of(panelId))
    expect(runs).toMatchObject([{ name: "Panel", pieces: 25, metres: 45.25 }]);
  expect(of(panelId).at(-1)?.kind).toBe("finish");

  // The first set-up takes everything: bit, height, fence, dial and a test piece.
  const [first] = setups;
  const everything = Object.values(CHANGES).reduce((sum, minutes) => sum + minutes, 0);
  expect(first?.changeMin).toBeCloseTo(everything, 6);
  // After it, a new bit always has its height, its fence or guide and a test piece; a pass by the fence only its fence and a test piece.
  const [rough, finish] = of(copeId);
  expect(rough?.changeMin).toBeGreaterThanOrEqual(
    CHANGES.bit + CHANGES.height + CHANGES.fence + CHANGES.testPiece,
  );
  expect(finish?.changeMin).toBeCloseTo(CHANGES.fence + CHANGES.testPiece, 6);
  for (const [, next] of of(panelId).entries()) {
    if (next !== of(panelId)[0]) expect(next.changeMin).toBeCloseTo(CHANGES.height + CHANGES.testPiece, 6);
  }
  const changing = setups.reduce((sum, { changeMin }) => sum + changeMin, 0);
  expect(work.minutes.changingOver.usualMin).toBeCloseTo(changing, 1);

  // Each piece is handled at each set-up for 15 s: 2 × 52 + 2 × 104 + passes × 25.
  const times = 2 * 52 + 2 * 104 + of(panelId).length * 25;
  expect(work.minutes.handling.usualMin).toBeCloseTo((times * 15) / 60, 1);
  // Cutting is each piece's own time, added up; the day is the three together, give or take 30 %.
  const cutting =
    setups.flatMap(({ runs }) => runs).reduce((sum, run) => sum + run.pieces * run.secondsPerPiece, 0) / 60;
  expect(Math.abs(work.minutes.cutting.usualMin - cutting)).toBeLessThan(1);
  const usual = changing + (times * 15) / 60 + work.minutes.cutting.usualMin;
  expect(work.minutes.total.usualMin).toBeCloseTo(usual, 0);
  expect(work.minutes.total.leastMin).toBeCloseTo(usual * 0.7, 0);
  expect(work.minutes.total.mostMin).toBeCloseTo(usual * 1.3, 0);

  // A side of 700 mm takes 700/300 of what one of 300 mm does at the same feed (geometry).
  const [railRun, stileRun] = of(stickId)[0]?.runs ?? [];
  expect((stileRun?.secondsPerPiece ?? 0) / (railRun?.secondsPerPiece ?? 1)).toBeCloseTo(700 / 300, 1);
});
