import { type Bit, type Cut, describeFinding, makePlan, showIn } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, EDGES, inputOf } from "./set-up-plans.ts";

const TRIM = bitOf({ kind: "flush-trim", diameterMm: 19.05, cuttingLengthMm: 50, bearing: "tip" });
const WEAK = { minRpm: 20_000, maxRpm: 26_000, dial: { marks: { first: 1, last: 6 } }, inputPowerW: 300 };

/** A plan by hand in a weak router. */
const weakly = (bit: Bit, cut: Cut) => makePlan({ ...inputOf(bit, cut, "handheld"), router: WEAK });

// Waste is sawn to within 2 to 3 mm of a template before it is trimmed (common practice).
describe("a cut refused for its load says what would do", () => {
  const overhang = (overhangMm: number): Cut => ({ kind: "trim", overhangMm, thicknessMm: 40, edges: EDGES });

  it("an overhang: leave at most so much, and that is planned", () => {
    const refused = weakly(TRIM, overhang(9));
    const finding = refused.findings.find(({ code }) => code === "too-heavy-at-once");
    if (finding?.code !== "too-heavy-at-once") throw new Error("it is too heavy");
    const { leaveMm } = finding;
    if (leaveMm === undefined) throw new Error("something may be left");
    expect(describeFinding(finding, showIn("metric"))).toMatch(/leave at most [0-9.]+ mm for this bit\.$/);
    expect(leaveMm).toBeGreaterThan(0.3);
    expect(weakly(TRIM, overhang(leaveMm)).passes).toHaveLength(1);
    expect(weakly(TRIM, overhang(leaveMm + 0.3)).passes).toHaveLength(0);
  });
});
