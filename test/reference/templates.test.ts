import type { Bit, Cut, Mounting } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bitOf, codesOf, EDGES, planOf, said } from "./set-up-plans.ts";

const CUTTING_MM = 25.4;
const BEARING_MM = 5;
const flush = (bearing: "tip" | "shank" | "both"): Bit =>
  bitOf({
    ...{ kind: "flush-trim", diameterMm: 19.05, cuttingLengthMm: CUTTING_MM },
    ...{ bearing, pilotHeightMm: BEARING_MM },
  });
const trim = (thicknessMm: number, templateThicknessMm: number): Cut => ({
  ...{ kind: "trim", overhangMm: 1, thicknessMm, templateThicknessMm },
  edges: EDGES,
});
const MOUNTINGS: readonly Mounting[] = ["table", "handheld"];

/** The bit's height over the table, or below the base. */
function heightMm(bit: Bit, cut: Cut, mounting: Mounting): number {
  const plan = planOf(bit, cut, mounting);
  expect(plan.verdict, JSON.stringify(plan.findings)).not.toBe("do-not-run");
  const step = plan.steps.find(({ code }) => code === "set-height");
  if (step?.code !== "set-height") throw new Error("no height");
  expect(step.heightMm).toBe(plan.passes[0]?.pass.heightMm);
  return step.heightMm;
}

// Shank bearing: template between work and table or base, tip bearing: at the far face. The bearing wholly on the template, never behind the
// base and never past the template; the edges over all of the work. Common practice; the numbers are geometry.
describe("a bearing on a template", () => {
  it.each(MOUNTINGS)("is set so that the edges reach 1 mm past the face the two share, %s", (mounting) => {
    expect(heightMm(flush("shank"), trim(19, 6), mounting)).toBeCloseTo(6 - 1 + CUTTING_MM, 9);
    expect(heightMm(flush("tip"), trim(19, 6), mounting)).toBeCloseTo(19 + 1 + BEARING_MM, 9);
    expect(heightMm(flush("both"), trim(19, 6), mounting)).toBeCloseTo(19 + 1 + BEARING_MM, 9);
  });

  it("lies wholly on the template with the edges over all of the work, whatever their thicknesses", () => {
    const thicknesses = fc.tuple(
      fc.double({ min: 3, max: CUTTING_MM, noNaN: true }),
      fc.double({ min: BEARING_MM, max: 40, noNaN: true }),
    );
    fc.assert(
      fc.property(thicknesses, fc.constantFrom(...MOUNTINGS), ([workMm, templateMm], mounting) => {
        const shank = heightMm(flush("shank"), trim(workMm, templateMm), mounting);
        const slackMm = 1e-9;
        expect(shank - CUTTING_MM - BEARING_MM).toBeGreaterThanOrEqual(-slackMm);
        expect(shank - CUTTING_MM).toBeLessThanOrEqual(templateMm + slackMm);
        expect(shank).toBeGreaterThanOrEqual(templateMm + workMm - slackMm);
        const tip = heightMm(flush("tip"), trim(workMm, templateMm), mounting);
        expect(tip - BEARING_MM).toBeGreaterThanOrEqual(workMm - slackMm);
        expect(tip).toBeLessThanOrEqual(workMm + templateMm + slackMm);
        expect(tip - BEARING_MM - CUTTING_MM).toBeLessThanOrEqual(slackMm);
      }),
      { numRuns: 200 },
    );
  });

  it.each<["tip" | "shank"]>([["tip"], ["shank"]])(
    "at the %s is refused a template thinner than itself",
    (at) => {
      const plan = planOf(flush(at), trim(19, 4.9));
      expect(codesOf(plan)).toContain("template-too-thin");
      expect(plan.verdict).toBe("do-not-run");
      expect(codesOf(planOf(flush(at), trim(19, 5)))).not.toContain("template-too-thin");
    },
  );

  it("says on which face the template lies, and what of the bit stands out past work and template", () => {
    const shank = said(planOf(flush("shank"), trim(19, 6))).join("\n");
    expect(shank).toMatch(/template, 6 mm thick, between the work and the table or base/);
    // 30.4 less 25 of work and template.
    expect(shank).toMatch(/stands out 5\.4 mm past them/);
    const tip = said(planOf(flush("tip"), trim(19, 6))).join("\n");
    expect(tip).toMatch(/on the face of the work away from the table or base/);
    expect(tip).not.toMatch(/stands out/);
  });

  it("takes a template of 6 mm when nobody says, and says that the height holds for that one alone", () => {
    const cut: Cut = { kind: "trim", overhangMm: 1, thicknessMm: 19, edges: EDGES };
    const plan = planOf(flush("shank"), cut);
    expect(plan.assumptions).toContainEqual({ code: "template-assumed", thicknessMm: 6 });
  });
});
