import {
  describeAssumption,
  describeFinding,
  describeLimit,
  describeMountingReason,
  describeNextTrial,
  describePrecaution,
  describeRaisedBy,
  describeStep,
  describeUncertainty,
  makePlan,
  nextTrial,
  showIn,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pastUses, planInputs, speedTrials } from "./arbitraries.ts";

const LEFT_OPEN = /NaN|undefined|null|\[object|Infinity| {2}|\.\.|^\s*$/;

describe("every sentence of every plan", () => {
  it("ends as a sentence does and leaves no value open, in each unit system", () => {
    fc.assert(
      fc.property(
        planInputs,
        fc.array(pastUses, { maxLength: 3 }),
        fc.array(speedTrials, { maxLength: 3 }),
        fc.constantFrom("metric" as const, "imperial" as const, "both" as const),
        (input, history, trials, units) => {
          const plan = makePlan({ ...input, history, trials });
          const show = showIn(units);
          const sentences = [
            describeNextTrial(nextTrial({ ...input, trials }), show),
            ...plan.findings.map((each) => describeFinding(each, show)),
            ...plan.limits.map((each) => describeLimit(each, show)),
            ...plan.mounting.reasons.map((each) => describeMountingReason(each, show)),
            ...plan.precautions.map((each) => describePrecaution(each, show)),
            ...plan.steps.map((each) => describeStep(each, show)),
            ...plan.assumptions.map((each) => describeAssumption(each, show)),
            ...plan.speed.uncertainties.map((each) => describeUncertainty(each, show)),
            ...(plan.speed.raisedBy ? [describeRaisedBy(plan.speed.raisedBy, show)] : []),
          ];
          for (const sentence of sentences) {
            expect(sentence).not.toMatch(LEFT_OPEN);
            expect(sentence).toMatch(/^[A-Z0-9].*\.$/);
            // As a careful teacher speaks: no shouting.
            expect(sentence).not.toMatch(/!|[A-Z]{4,}/);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });
});
