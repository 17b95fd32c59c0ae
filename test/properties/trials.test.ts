import {
  bitFaults,
  DEFAULT_POLICY,
  DomainError,
  FORMS,
  makePlan,
  type NextTrial,
  nextTrial,
  type SpeedTrial,
  strictestPolicy,
  type TrialInput,
  usualCut,
  WOODS,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bits, policies, routers, speedTrials } from "./arbitraries.ts";
import { formsOf } from "./form-arbitraries.ts";

const RUNS = { numRuns: 1000 };

/** More steps than any dial has marks. */
const ENDLESS = 1000;

const everyBit = fc
  .oneof(
    bits,
    fc.record({
      form: fc.oneof(...FORMS.map(formsOf)),
      shankDiameterMm: fc.constantFrom(6.35, 12.7),
      wings: fc.integer({ min: 1, max: 4 }),
    }),
  )
  .filter((bit) => bitFaults(bit).length === 0);

const inputs: fc.Arbitrary<TrialInput> = fc.record({
  bit: everyBit,
  router: routers,
  mounting: fc.constantFrom("table" as const, "handheld" as const),
  policy: fc.oneof(
    fc.constant(DEFAULT_POLICY),
    policies,
    fc
      .double({ min: 1.05, max: 1.25, noNaN: true })
      .map((trialStepRatio) => strictestPolicy({ trialStepRatio })),
  ),
  trials: fc.array(speedTrials, { maxLength: 4 }),
});

describe("a guided speed trial", () => {
  it("never proposes a speed above a limit that holds without trials", () => {
    let held = 0;
    fc.assert(
      fc.property(inputs, (input) => {
        const next = nextTrial(input);
        const limits = limitsWithoutTrials(input);
        if (next.kind !== "try" || limits === undefined) return;
        held += 1;
        const { rpm, rpmHighest } = next.setting;
        for (const limit of limits) {
          expect(limit.strength === "hard" ? rpmHighest : rpm, limit.name).toBeLessThanOrEqual(limit.rpm);
        }
      }),
      RUNS,
    );
    expect(held).toBeGreaterThan(RUNS.numRuns / 10);
  });

  it("rises strictly as the bit runs free, in steps the policy allows, and ends under the ceiling", () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const start = { ...input, trials: [] };
        const climb = climbed(start, () => "ran-free");
        const { last } = climb;
        const speeds = climb.tried.map(({ rpm }) => rpm);
        for (const [index, rpm] of speeds.slice(1).entries()) {
          expect(rpm).toBeGreaterThan(speeds[index] ?? Number.POSITIVE_INFINITY);
        }
        expect(climb.counted).toEqual(speeds.map((_, index) => [index + 1, speeds.length]));
        if (last.kind === "not-possible") expect(speeds).toEqual([]);
        else
          expect(last).toMatchObject({ kind: "done", reason: "at-ceiling", fastestFreeRpm: speeds.at(-1) });
      }),
      RUNS,
    );
  });

  it("takes no step greater than the policy's while a mark within it holds", () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { tried } = climbed({ ...input, trials: [] }, () => "ran-free");
        for (const [index, { rpm }] of tried.entries()) {
          const before = tried[index - 1]?.rpm;
          if (before === undefined || rpm <= before * input.policy.trialStepRatio) continue;
          // A coarse dial: with any step at all, this very mark would be the next.
          const policy = strictestPolicy({ trialStepRatio: 1.05 });
          const finer = nextTrial({
            ...input,
            policy: { ...input.policy, trialStepRatio: policy.trialStepRatio },
            trials: [free(before)],
          });
          expect(finer).toMatchObject({ kind: "try", setting: { rpm } });
        }
      }),
      RUNS,
    );
  });

  it("after it shook, in any router, nothing at or above that speed is proposed again", () => {
    fc.assert(
      fc.property(inputs, fc.array(fc.boolean(), { minLength: 1, maxLength: 30 }), (input, outcomes) => {
        const { tried } = climbed(input, (step) => (outcomes[step % outcomes.length] ? "ran-free" : "shook"));
        let slowestShook = Math.min(...shakesOf(input.trials));
        for (const { rpm, rpmHighest, outcome } of tried) {
          expect(rpm).toBeLessThan(slowestShook);
          expect(rpmHighest).toBeLessThan(slowestShook);
          if (outcome === "shook") slowestShook = Math.min(slowestShook, rpm);
        }
      }),
      RUNS,
    );
  });

  it("a trial more in which it shook leads to no faster setting than was tried or proposed before", () => {
    fc.assert(
      fc.property(inputs, speedTrials, (input, trial) => {
        const before = nextTrial(input);
        const after = nextTrial({ ...input, trials: [...input.trials, { ...trial, outcome: "shook" }] });
        if (after.kind !== "try") return;
        const reached = before.kind === "try" ? before.setting.rpm : Math.max(...freeSpeeds(input.trials));
        expect(after.setting.rpm).toBeLessThanOrEqual(reached);
      }),
      RUNS,
    );
  });

  it("never gives a speed above the ceiling as the fastest that ran free", () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const next = nextTrial(input);
        if (next.kind === "done") expect(next.fastestFreeRpm ?? 0).toBeLessThanOrEqual(next.under.ceilingRpm);
      }),
      RUNS,
    );
  });
});

type Tried = { readonly rpm: number; readonly rpmHighest: number; readonly outcome: SpeedTrial["outcome"] };

/** Follows the trial to its end. */
function climbed(input: TrialInput, outcomeOf: (step: number) => SpeedTrial["outcome"]) {
  const tried: Tried[] = [];
  const counted: [number, number][] = [];
  let trials = input.trials;
  for (let step = 0; step < ENDLESS; step += 1) {
    const last: NextTrial = nextTrial({ ...input, trials });
    if (last.kind !== "try") return { tried, counted, last };
    const { rpm, rpmHighest } = last.setting;
    const outcome = outcomeOf(step);
    tried.push({ rpm, rpmHighest, outcome });
    counted.push([last.number, last.ofAtMost]);
    trials = [...trials, { rpm, outcome, isSameRouter: true }];
  }
  throw new Error("the trial does not end");
}

function free(rpm: number): SpeedTrial {
  return { rpm, outcome: "ran-free", isSameRouter: true };
}

function freeSpeeds(trials: readonly SpeedTrial[]): number[] {
  return trials
    .filter(({ outcome, isSameRouter: sameRouter }) => outcome === "ran-free" && sameRouter)
    .map(({ rpm }) => rpm);
}

function shakesOf(trials: readonly SpeedTrial[]): number[] {
  return trials.filter(({ outcome }) => outcome === "shook").map(({ rpm }) => rpm);
}

/** The limits a plan of the usual cut is held to; undefined for the odd outline whose usual cut removes nothing. */
function limitsWithoutTrials({ bit, router, policy, mounting = "table" }: TrialInput) {
  const [wood] = WOODS;
  if (wood === undefined) throw new Error("no wood");
  try {
    return makePlan({ bit, router, policy, mounting, wood, cut: usualCut(bit) }).limits;
  } catch (error) {
    if (error instanceof DomainError && error.faults.every(({ pointer }) => pointer.startsWith("/cut")))
      return;
    throw error;
  }
}
