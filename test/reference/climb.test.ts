import { DEFAULT_POLICY, describeStep, makePlan, showIn, strictestPolicy } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { codesOf, EDGES, inputOf, planOf, STRAIGHT } from "./set-up-plans.ts";

const RABBET = { kind: "rabbet", depthMm: 6, widthMm: 8, edges: EDGES } as const;
const biteOf = (plan: ReturnType<typeof planOf>) =>
  Math.max(...plan.passes.map(({ pass }) => pass.geometry.biteMm));

// With the rotation only by hand, at 1/32 in or less, the work clamped; never in a table (common practice).
describe("a cut fed with the rotation", () => {
  it("is planned light in every pass, by hand", () => {
    const plan = planOf(STRAIGHT, { ...RABBET, feedDirection: "with-rotation" }, "handheld");
    expect(codesOf(plan)).toContain("light-climb-cut");
    expect(plan.passes.length).toBeGreaterThan(6);
    expect(biteOf(plan)).toBeLessThanOrEqual(DEFAULT_POLICY.climbBiteMaxMm + 1e-9);
    for (const { uses } of plan.passes) expect(uses.map(({ name }) => name)).toContain("climb-bite");
  });

  it("is refused in a table, and everywhere by a shop that allows none", () => {
    const cut = { ...RABBET, feedDirection: "with-rotation" } as const;
    expect(planOf(STRAIGHT, cut, "table")).toMatchObject({ verdict: "do-not-run", passes: [] });
    expect(codesOf(planOf(STRAIGHT, cut, "table"))).toContain("climb-not-allowed");
    const policy = strictestPolicy({ climbBiteMaxMm: 0 });
    const none = makePlan({ ...inputOf(STRAIGHT, cut, "handheld"), policy });
    expect(none.findings.map(({ code }) => code)).toContain("climb-not-allowed");
  });
});

describe("a light back-rout against tear-out", () => {
  it("comes before the main passes, with the rotation and light; the others against it", () => {
    const plan = planOf(STRAIGHT, { ...RABBET, hasBackRout: true }, "handheld");
    const [first, ...others] = plan.passes;
    expect(first?.pass.kind).toBe("back-rout");
    expect(first?.pass.geometry.biteMm).toBeLessThanOrEqual(DEFAULT_POLICY.climbBiteMaxMm + 1e-9);
    expect(others.map(({ pass }) => pass.kind)).not.toContain("back-rout");
    const directions = plan.steps.flatMap((step) => (step.code === "cut-edges" ? [step.direction] : []));
    expect(directions[0]).toBe("with-rotation");
    expect(new Set(directions.slice(1))).toEqual(new Set(["router-left-to-right"]));
    const sum = plan.passes.reduce((total, { pass }) => total + pass.geometry.removedAreaMm2, 0);
    expect(sum).toBeCloseTo(6 * 8, 6);
    const sentences = plan.steps.map((step) => describeStep(step, showIn("metric"))).join(" ");
    expect(sentences).toMatch(/Pass 1, the light back-rout: cut edge 1 .* with the rotation/);
  });

  it("is by hand only", () => {
    const plan = planOf(STRAIGHT, { ...RABBET, hasBackRout: true }, "table");
    expect(codesOf(plan)).toContain("climb-not-allowed");
    expect(plan.verdict).toBe("do-not-run");
  });
});
