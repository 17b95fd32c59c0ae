import { makePlan, type Plan, type SetIn } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planInputs } from "./arbitraries.ts";

const RUNS = { numRuns: 600 };
/** What a person can set: 0.1 mm with a dial, 1/64 in by fractions (ours). */
const STEP_MM: Readonly<Record<SetIn, number>> = { metric: 0.1, imperial: 25.4 / 64 };
const inputs = fc.tuple(planInputs, fc.constantFrom<SetIn>("metric", "imperial"));

const passesOf = ({ passes }: Plan) => passes.map(({ pass }) => pass);
const isOnAMark = (mm: number, stepMm: number) => Math.abs(mm / stepMm - Math.round(mm / stepMm)) < 1e-6;

describe("every setting of a plan", () => {
  it("is one that a person can make, or the exact final one", () => {
    let roughCount = 0;
    fc.assert(
      fc.property(inputs, ([input, setIn]) => {
        const passes = passesOf(makePlan({ ...input, setIn }));
        const last = passes.at(-1);
        for (const { cutterMm, fenceMm } of passes.slice(0, -1)) {
          roughCount += 1;
          const stepMm = STEP_MM[setIn];
          expect(isOnAMark(cutterMm, stepMm) || cutterMm === last?.cutterMm, `cutter ${cutterMm}`).toBe(true);
          expect(isOnAMark(fenceMm, stepMm) || fenceMm === last?.fenceMm, `fence ${fenceMm}`).toBe(true);
        }
      }),
      RUNS,
    );
    expect(roughCount).toBeGreaterThan(200);
  });

  it("ends where the cut ends, whatever it is set by", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        const [metric, imperial] = [
          makePlan({ ...input, setIn: "metric" }),
          makePlan({ ...input, setIn: "imperial" }),
        ];
        if (metric.verdict === "do-not-run" || imperial.verdict === "do-not-run") return;
        const ends = [metric, imperial].map((plan) => passesOf(plan).at(-1));
        expect(ends[0]?.heightMm).toBeCloseTo(ends[1]?.heightMm ?? Number.NaN, 9);
        expect(ends[0]?.fenceMm).toBeCloseTo(ends[1]?.fenceMm ?? Number.NaN, 9);
        expect(metric.passes.at(-1)?.pass.geometry.beforeEndMm).toBe(0);
      }),
      RUNS,
    );
  });

  it("never makes a pass heavier than a constraint allows", () => {
    fc.assert(
      fc.property(inputs, ([input, setIn]) => {
        for (const { uses, geometry } of passesOf(makePlan({ ...input, setIn }))) {
          for (const { name, ratio } of uses) expect(ratio, name).toBeLessThanOrEqual(1 + 1e-9);
          expect(geometry.biteMm).toBeGreaterThan(0);
        }
      }),
      RUNS,
    );
  });
});

describe("a finishing pass", () => {
  it("is lighter than every roughing pass, in bite and in section, or there is none", () => {
    let finishCount = 0;
    fc.assert(
      fc.property(inputs, ([input, setIn]) => {
        const passes = passesOf(makePlan({ ...input, setIn }));
        const finish = passes.find(({ kind }) => kind === "finish");
        if (finish === undefined) return;
        expect(finish).toBe(passes.at(-1));
        for (const rough of passes.filter(({ kind }) => kind === "rough")) {
          finishCount += 1;
          expect(finish.geometry.biteMm).toBeLessThanOrEqual(0.75 * rough.geometry.biteMm + 1e-9);
          expect(finish.geometry.removedAreaMm2).toBeLessThanOrEqual(
            0.75 * rough.geometry.removedAreaMm2 + 1e-9,
          );
        }
      }),
      RUNS,
    );
    expect(finishCount).toBeGreaterThan(200);
  });
});
