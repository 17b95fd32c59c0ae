import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { woodById } from "../wood/registry.ts";
import { edgesOverJob } from "./edge-over-job.ts";
import type { SetupRun } from "./set-up.ts";
import { jobTimes } from "./times.ts";

// Sheets of MDF count 2.5 metres for each metre cut with carbide (`wear/wear-factor.test.ts`).
const [mdf] = [woodById("mdf")].flatMap((wood) => (wood === undefined ? [] : [{ wood }]));
if (mdf === undefined) throw new Error("no MDF");
const MDF = mdf;

function setup(id: string, ...runs: readonly Partial<SetupRun>[]) {
  const whole = { cut: 0, pass: 1, pieces: 0, fenceMm: 0, metresPerPiece: 0, secondsPerPiece: 0 };
  return { id, bitId: "bit", runs: runs.map((run) => ({ ...whole, ...run })) };
}

describe("what a job takes of an edge", () => {
  const before = {
    bitId: "bit",
    toothMaterial: "carbide-tipped",
    usedEquivalentM: 700,
    expectedM: 800,
  } as const;

  it("is metres times how abrasive the wood is, and says after how many pieces it is dull", () => {
    // 100 m are left, each piece takes 2 × 1.25 × 2.5 = 2.5 m at 1 m: the 40th reaches the end of the edge's life.
    const setups = [setup("one", { pieces: 60, metresPerPiece: 1 })];
    expect(edgesOverJob(setups, [MDF], [before], DEFAULT_POLICY)).toEqual([
      {
        bitId: "bit",
        usedRatioBefore: 0.875,
        usedRatioAfter: 850 / 800,
        dueAt: { setupId: "one", cut: 0, afterPieces: 0 },
        dullAt: { setupId: "one", cut: 0, afterPieces: 39 },
      },
    ]);
  });

  it("goes on from set-up to set-up in their order, of this bit alone", () => {
    const setups = [
      setup("one", { pieces: 30, metresPerPiece: 1 }),
      { ...setup("other", { pieces: 1000, metresPerPiece: 10 }), bitId: "another" },
      setup("two", { pieces: 30, metresPerPiece: 1 }),
    ];
    const [edge] = edgesOverJob(setups, [MDF], [before], DEFAULT_POLICY);
    expect(edge?.dullAt).toEqual({ setupId: "two", cut: 0, afterPieces: 9 });
  });

  it("says nothing of an edge that lasts", () => {
    const setups = [setup("one", { pieces: 10, metresPerPiece: 1 })];
    const [edge] = edgesOverJob(setups, [MDF], [{ ...before, usedEquivalentM: 0 }], DEFAULT_POLICY);
    expect(edge).toMatchObject({ usedRatioAfter: 25 / 800, dueAt: undefined, dullAt: undefined });
  });
});

describe("how long a job takes", () => {
  it("is cutting, handling each piece each time, and changing over, give or take the policy's spread", () => {
    const setups = [
      setup("one", { pieces: 48, secondsPerPiece: 2.5 }),
      setup("two", { pieces: 48, secondsPerPiece: 2.5 }, { pieces: 24, secondsPerPiece: 10 }),
    ];
    // 48 · 2.5 + 48 · 2.5 + 24 · 10 = 480 s; 120 times at the bit at 15 s = 1800 s; 20 min.
    const times = jobTimes(setups, 20, DEFAULT_POLICY);
    expect(times.cutting).toEqual({ leastMin: 8 * 0.7, usualMin: 8, mostMin: 8 * 1.3 });
    expect(times.handling.usualMin).toBe(30);
    expect(times.total).toEqual({ leastMin: 58 * 0.7, usualMin: 58, mostMin: 58 * 1.3 });
  });
});
