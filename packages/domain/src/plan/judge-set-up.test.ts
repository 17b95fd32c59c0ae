import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { woodById } from "../wood/registry.ts";
import { describeFinding } from "../wording/english/findings.ts";
import { showIn } from "../wording/show.ts";
import { makePlan } from "./make-plan.ts";
import type { PastUse } from "./past-use.ts";
import type { PlanInput } from "./plan.ts";

const wood = (id: string) => {
  const found = woodById(id);
  if (found === undefined) throw new Error(id);
  return found;
};

const BASE: PlanInput = {
  bit: {
    form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 58,
  },
  router: {
    minRpm: 10000,
    maxRpm: 22000,
    dial: { marks: { first: 1, last: 6 }, steps: 2 },
    inputPowerW: 1600,
  },
  mounting: "table",
  wood: wood("black-cherry"),
  cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
  policy: DEFAULT_POLICY,
};

describe("collets", () => {
  it("none fit for use: refused, and not the same as collets nobody recorded", () => {
    const none = makePlan({ ...BASE, router: { ...BASE.router, colletDiametersMm: [] } });
    expect(none).toMatchObject({
      verdict: "do-not-run",
      findings: [{ code: "no-collet-fits", shankDiameterMm: 12.7, colletDiametersMm: [] }],
    });
    expect(none.assumptions.map(({ code }) => code)).not.toContain("collets-unknown");
    const [finding] = none.findings;
    if (finding === undefined) throw new Error("no finding");
    expect(describeFinding(finding, showIn("imperial"))).toMatch(
      /^No collet .* fit for use.* 1\/2 in safely\./,
    );
    expect(makePlan(BASE)).toMatchObject({ verdict: "run" });
    expect(makePlan(BASE).assumptions.map(({ code }) => code)).toContain("collets-unknown");
  });
});

describe("earlier cuts", () => {
  const use = (outcome: PastUse["outcome"]) => ({ outcome, isSameRouter: true, sameWood: true });
  const after = (...outcomes: readonly PastUse["outcome"][]) =>
    makePlan({ ...BASE, history: outcomes.map(use) });

  it("that came out fine change nothing; what scorched or tore out is noted", () => {
    expect(after("fine")).toEqual(makePlan(BASE));
    expect(after("scorched", "tore-out")).toMatchObject({
      verdict: "run",
      findings: [{ code: "scorched-before" }, { code: "tore-out-before" }],
    });
  });

  it.each(["chattered", "came-loose"] as const)("in which it %s ask for care, first of all", (outcome) => {
    expect(after("scorched", outcome)).toMatchObject({
      verdict: "run-with-care",
      findings: [{ code: `${outcome}-before`, times: 1 }, { code: "scorched-before" }],
    });
  });
});
