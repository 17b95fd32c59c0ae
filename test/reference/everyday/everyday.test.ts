import { FORMS, formOutline, type Plan } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { sentencesOf } from "./card.ts";
import type { EverydayPlan } from "./everyday-plan.ts";
import { EVERYDAY_PLANS, everydayPlan } from "./plans.ts";

/** What a person can set, mm: heights are compared to this. */
const SETTABLE_MM = 0.1;

// The expected set-ups were written down from the trade before the plans were computed: common practice.
describe.each(EVERYDAY_PLANS)("$name", (each) => {
  const { expected } = each;

  it(`is ${expected.verdict === "runs" ? "planned" : "refused"}, guided as the trade guides it`, () => {
    const plan = everydayPlan(each);
    const codes = plan.findings.map(({ code }) => code);
    expect([plan.verdict === "do-not-run" ? "do-not-run" : "runs", codes]).toEqual([expected.verdict, codes]);
    if (expected.guide !== undefined) expect(plan.guide).toBe(expected.guide);
  });

  it("is set to the height, fence, passes and speed of the trade", () => {
    const plan = everydayPlan(each);
    const last = plan.passes.at(-1)?.pass;
    if (expected.edgesOutMm !== undefined) {
      expect(Math.abs((last?.heightMm ?? 0) - tipMm(each) - expected.edgesOutMm)).toBeLessThan(SETTABLE_MM);
    }
    if (expected.fenceMm !== undefined) expect(last?.fenceMm).toBeCloseTo(expected.fenceMm, 3);
    if (expected.passes !== undefined) {
      const [least, most] = expected.passes;
      expect(plan.passes.length).toBeGreaterThanOrEqual(least);
      expect(plan.passes.length).toBeLessThanOrEqual(most);
    }
    if (expected.maxRpm !== undefined) expect(greatestRpm(plan)).toBeLessThanOrEqual(expected.maxRpm);
  });

  it("says what must be said, and nothing that contradicts the cut", () => {
    const said = sentencesOf(everydayPlan(each)).join("\n");
    for (const sentence of expected.says ?? []) expect(said).toMatch(sentence);
    for (const sentence of expected.neverSays ?? []) expect(said).not.toMatch(sentence);
  });
});

it("among them are every form that is not given by its outline, and both mountings", () => {
  const forms = new Set(EVERYDAY_PLANS.map(({ bit }) => bit.form.kind));
  expect(FORMS.map(({ kind }) => kind).filter((kind) => !forms.has(kind) && kind !== "custom")).toEqual([]);
  expect(new Set(EVERYDAY_PLANS.map(({ mounting }) => mounting)).size).toBe(2);
});

/** Where the edges begin: above the bearing of a bit that has one at its tip. */
function tipMm({ bit }: EverydayPlan): number {
  return formOutline(bit.form).find(({ role }) => role === "edge")?.fromMm ?? 0;
}

function greatestRpm({ speed }: Plan): number {
  return speed.setting?.rpm ?? 0;
}
