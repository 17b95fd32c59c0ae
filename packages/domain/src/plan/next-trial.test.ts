import { describe, expect, it } from "vitest";
import type { SpeedTrial } from "../limit/trial.ts";
import { DEFAULT_POLICY, strictestPolicy } from "../policy/policy.ts";
import { describeNextTrial } from "../wording/english/trials.ts";
import { showIn } from "../wording/show.ts";
import { nextTrial, type TrialInput } from "./next-trial.ts";

// 3-1/2 in: 12 000 rpm by the trade's chart (common practice), 12 031 rpm at 56 m/s.
const PANEL: TrialInput["bit"] = {
  form: {
    kind: "panel-raising",
    diameterMm: 88.9,
    pilotDiameterMm: 19,
    profileHeightMm: 12,
    face: "ogee",
  },
  shankDiameterMm: 12.7,
  wings: 2,
  massG: 340,
  runOutMm: 0.02,
};
const SMALL: TrialInput["bit"] = {
  form: { kind: "straight", diameterMm: 19, cuttingLengthMm: 25 },
  shankDiameterMm: 12.7,
  wings: 2,
  massG: 100,
  runOutMm: 0.02,
};

/** Two readings at every mark: 8 000, 10 000, 11 000, 14 000, 20 000, 22 000 rpm. */
const ROUTER: TrialInput["router"] = {
  minRpm: 8000,
  maxRpm: 22000,
  colletDiametersMm: [6.35, 12.7],
  dial: {
    marks: { first: 1, last: 6 },
    readings: [8000, 10000, 11000, 14000, 20000, 22000].flatMap((rpm, index) => [
      { mark: index + 1, rpm },
      { mark: index + 1, rpm },
    ]),
  },
};

const BASE: TrialInput = { bit: SMALL, router: ROUTER, policy: DEFAULT_POLICY, trials: [] };
const free = (rpm: number, sameRouter = true): SpeedTrial => ({
  rpm,
  outcome: "ran-free",
  isSameRouter: sameRouter,
});
const shook = (rpm: number, sameRouter = true): SpeedTrial => ({
  rpm,
  outcome: "shook",
  isSameRouter: sameRouter,
});
const after = (...trials: readonly SpeedTrial[]) => nextTrial({ ...BASE, trials });

describe("a guided speed trial", () => {
  it("starts at the slowest mark and says how many steps there may be", () => {
    expect(after()).toMatchObject({
      kind: "try",
      setting: { mark: 1, rpm: 8000, rpmHighest: 8160, basis: "reading" },
      number: 1,
      ofAtMost: 6,
    });
  });

  it("takes the fastest mark within one step, or the very next if marks lie farther apart", () => {
    expect(after(free(8000))).toMatchObject({ setting: { rpm: 10000 }, number: 2 });
    expect(after(free(8000), free(9000))).toMatchObject({ setting: { rpm: 11000 }, number: 3, ofAtMost: 6 });
    expect(after(free(11000))).toMatchObject({ setting: { rpm: 14000 } });
    expect(after(free(14000))).toMatchObject({ setting: { rpm: 20000 } });
  });

  it("takes a recorded speed that was rounded for its mark's own", () => {
    const policy = strictestPolicy({ trialStepRatio: 1.05 });
    expect(nextTrial({ ...BASE, policy, trials: [free(9991)] })).toMatchObject({ setting: { rpm: 11000 } });
    expect(nextTrial({ ...BASE, policy, trials: [free(9989.95)] })).toMatchObject({
      setting: { rpm: 10000 },
    });
  });

  it("takes smaller steps if the policy says so", () => {
    const policy = strictestPolicy({ trialStepRatio: 1.1 });
    expect(nextTrial({ ...BASE, policy, trials: [free(10000)] })).toMatchObject({ setting: { rpm: 11000 } });
  });

  it("does not climb on what ran free in another router", () => {
    expect(after(free(14000, false))).toMatchObject({ setting: { rpm: 8000 }, number: 1 });
  });

  it("ends once the bit shook, and gives the fastest speed at which it ran free", () => {
    expect(after(free(8000), free(10000), shook(11000))).toMatchObject({
      kind: "done",
      reason: "shook",
      fastestFreeRpm: 10000,
    });
    expect(after(shook(8000))).toEqual({
      kind: "done",
      reason: "shook",
      fastestFreeRpm: undefined,
      under: { ceilingRpm: 22000, bindingLimit: "router" },
    });
  });

  it("stays a whole step under a speed at which it shook, in this router or another", () => {
    for (const sameRouter of [true, false]) {
      // 0.8 × 17 500 = 14 000.
      expect(after(free(11000), shook(17500, sameRouter))).toMatchObject({ setting: { rpm: 14000 } });
      expect(after(free(11000), shook(17499, sameRouter))).toMatchObject({ kind: "done", reason: "shook" });
    }
  });

  it("stays under it with the speed's whole uncertainty", () => {
    // The marks may run 50 % fast: 11 000 could be 16 500.
    const policy = strictestPolicy({ dialReadToleranceRatio: 0.5 });
    const next = (rpm: number) => nextTrial({ ...BASE, policy, trials: [free(10000), shook(rpm)] });
    expect(next(16500)).toMatchObject({ kind: "done", reason: "shook" });
    expect(next(16501)).toMatchObject({ setting: { rpm: 11000 } });
  });

  it("ends under the ceiling", () => {
    const trials = [free(8000), free(10000), free(11000)];
    expect(nextTrial({ ...BASE, bit: PANEL, trials })).toEqual({
      kind: "done",
      reason: "at-ceiling",
      fastestFreeRpm: 11000,
      under: { ceilingRpm: 12000, bindingLimit: "diameter-chart" },
    });
  });

  it("gives no speed above the ceiling as one that ran free", () => {
    expect(nextTrial({ ...BASE, bit: PANEL, trials: [free(10000), free(14000)] })).toMatchObject({
      kind: "done",
      fastestFreeRpm: 10000,
    });
  });

  it("is not possible if the slowest mark breaks a limit, and names it", () => {
    const router = { minRpm: 16000, maxRpm: 16000, colletDiametersMm: [12.7] };
    expect(nextTrial({ ...BASE, bit: PANEL, router })).toMatchObject({
      kind: "not-possible",
      reason: "router-too-fast",
      slowestRpm: 16000,
      breaks: ["diameter-chart", "rim-speed"],
      limitRpm: 12000,
    });
  });

  it("is not possible without a collet, nor by hand with a bit for the table only", () => {
    const router = { ...ROUTER, colletDiametersMm: [] };
    expect(nextTrial({ ...BASE, router })).toEqual({ kind: "not-possible", reason: "no-collet-fits" });
    expect(nextTrial({ ...BASE, bit: PANEL, mounting: "handheld" })).toEqual({
      kind: "not-possible",
      reason: "table-only",
    });
    expect(nextTrial({ ...BASE, bit: PANEL, mounting: "table" })).toMatchObject({ kind: "try" });
    expect(nextTrial({ ...BASE, mounting: "handheld" })).toMatchObject({ kind: "try" });
  });

  it("is described in sentences: what to set, why it ends, why it cannot be", () => {
    const show = showIn("metric");
    const said = (input: Partial<TrialInput>) => describeNextTrial(nextTrial({ ...BASE, ...input }), show);
    expect(said({})).toMatch(
      /^Trial 1 of at most 6: .* Set the dial to 1: about 8,000 rpm\. .* over 22,000 rpm/,
    );
    expect(said({ trials: [free(8000), shook(10000)] })).toMatch(/shook .* ran free here is 8,000 rpm\.$/);
    expect(said({ trials: [shook(8000)] })).toMatch(/has not run free .* do not cut with it here\.$/);
    expect(said({ trials: [free(22000)] })).toMatch(/^No faster mark .* pass 22,000 rpm/);
    expect(said({ router: { ...ROUTER, colletDiametersMm: [] } })).toMatch(/no collet fit for use/);
    expect(said({ bit: PANEL, mounting: "handheld" })).toMatch(/in a table only\.$/);
    const fast = { minRpm: 16000, maxRpm: 16000 };
    expect(said({ bit: PANEL, router: fast })).toMatch(/16,000 rpm.*, 12,000 rpm\. Use a slower router\.$/);
    expect(said({ router: fast })).toMatch(/no dial to set: about 16,000 rpm/);
  });

  it("is refused for a router with no answer, with the field named", () => {
    const router = { ...ROUTER, minRpm: 30000 };
    expect(() => nextTrial({ ...BASE, router })).toThrow("/router/minRpm: min-above-max");
  });
});
