import { makePlan, type Verdict } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pastUses, planInputs } from "./arbitraries.ts";

const RUNS = { numRuns: 500 };
const MILDEST_FIRST: readonly Verdict[] = ["run", "run-with-care", "do-not-run"];
const uses = fc.array(pastUses, { maxLength: 8 });

describe("how earlier cuts came out", () => {
  it("changes nothing if there were none, or all came out fine, to the byte", () => {
    fc.assert(
      fc.property(planInputs, uses, (input, history) => {
        const fine = history.map((use) => ({ ...use, outcome: "fine" as const }));
        const without = JSON.stringify(makePlan(input));
        expect(JSON.stringify(makePlan({ ...input, history: [] }))).toBe(without);
        expect(JSON.stringify(makePlan({ ...input, history: fine }))).toBe(without);
      }),
      RUNS,
    );
  });

  it("never makes a verdict milder, and never changes a number", () => {
    fc.assert(
      fc.property(planInputs, uses, pastUses, (input, history, use) => {
        const before = makePlan({ ...input, history });
        const after = makePlan({ ...input, history: [...history, use] });
        expect(MILDEST_FIRST.indexOf(after.verdict)).toBeGreaterThanOrEqual(
          MILDEST_FIRST.indexOf(before.verdict),
        );
        const { verdict: _, findings: __, ...numbersBefore } = before;
        const { verdict: ___, findings: ____, ...numbersAfter } = after;
        expect(numbersAfter).toEqual(numbersBefore);
      }),
      RUNS,
    );
  });

  it("gives each code once, with every use that counts", () => {
    fc.assert(
      fc.property(planInputs, uses, (input, history) => {
        const found = makePlan({ ...input, history }).findings.filter((each) => "times" in each);
        expect(new Set(found.map(({ code }) => code)).size).toBe(found.length);
        const counting = history.filter(
          ({ outcome, isSameRouter: sameRouter, sameWood }) =>
            outcome === "came-loose" ||
            (outcome === "chattered" ? sameRouter : outcome !== "fine" && sameWood),
        );
        expect(found.reduce((sum, { times }) => sum + times, 0)).toBe(counting.length);
      }),
      RUNS,
    );
  });
});
