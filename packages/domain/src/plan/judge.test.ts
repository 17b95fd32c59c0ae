import { describe, expect, it } from "vitest";
import type { Form } from "../bit/form/registry.ts";
import { DEFAULT_POLICY, strictestPolicy } from "../policy/policy.ts";
import { woodById } from "../wood/registry.ts";
import { makePlan } from "./make-plan.ts";
import type { PlanInput } from "./plan.ts";
import { usualCut } from "./usual-cut.ts";

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

const codes = (input: PlanInput) => makePlan(input).findings.map(({ code }) => code);

describe("what weighs on a verdict", () => {
  it("nothing, for an ordinary bit in an ordinary groove", () => {
    expect(makePlan(BASE)).toMatchObject({ verdict: "run", findings: [] });
  });

  it("no collet made for the shank: refused, with the collets named", () => {
    const router = { ...BASE.router, colletDiametersMm: [6.35, 14] };
    expect(makePlan({ ...BASE, router })).toMatchObject({
      verdict: "do-not-run",
      findings: [{ code: "no-collet-fits", shankDiameterMm: 12.7, colletDiametersMm: [6.35, 14] }],
    });
  });

  it("a climb cut is made by hand alone, in light bites", () => {
    const climb = (depthMm: number, mounting: "table" | "handheld") => ({
      ...BASE,
      mounting,
      cut: { ...BASE.cut, kind: "groove" as const, depthMm, feedDirection: "with-rotation" as const },
    });
    expect(makePlan(climb(6, "table")).findings[0]).toMatchObject({
      code: "climb-not-allowed",
      severity: "refuse",
      reason: "table",
    });
    const { verdict, findings, passes } = makePlan(climb(6, "handheld"));
    expect(verdict).toBe("run-with-care");
    expect(findings.map(({ code }) => code)).toContain("light-climb-cut");
    for (const { pass } of passes) expect(pass.geometry.biteMm).toBeLessThanOrEqual(0.8 + 1e-9);
  });

  it("trials: the fastest that ran free below the slowest that shook is a guide", () => {
    const trials = [
      { rpm: 12000, outcome: "ran-free" as const, isSameRouter: true },
      { rpm: 14000, outcome: "ran-free" as const, isSameRouter: true },
      { rpm: 16000, outcome: "shook" as const, isSameRouter: true },
    ];
    const { speed } = makePlan({ ...BASE, trials });
    expect(speed).toMatchObject({
      bindingLimit: "tested",
      ceilingRpm: 14000,
      raisedBy: { code: "try-one-step-faster" },
    });
  });

  it("a contradiction between trials takes the safe side and is named", () => {
    const trials = [
      { rpm: 15000, outcome: "shook" as const, isSameRouter: true },
      { rpm: 17000, outcome: "ran-free" as const, isSameRouter: true },
    ];
    const plan = makePlan({ ...BASE, trials });
    expect(plan.speed.ceilingRpm).toBeCloseTo(12000, 9);
    expect(plan.findings).toMatchObject([{ code: "trials-contradict", shookRpm: 15000 }]);
  });

  it("a trial in another router limits nothing here, but warns", () => {
    const trials = [{ rpm: 12000, outcome: "shook" as const, isSameRouter: false }];
    const plan = makePlan({ ...BASE, trials });
    expect(plan.speed.ceilingRpm).toBe(makePlan(BASE).speed.ceilingRpm);
    expect(plan).toMatchObject({
      verdict: "run-with-care",
      findings: [{ code: "shook-in-other-router", shookRpm: 12000 }],
    });
  });

  it("a chip too thin for the fastest hand is named with the speed that would mend it", () => {
    const input = {
      ...BASE,
      policy: strictestPolicy({ handFeedMaxMPerMin: 0.4 }),
      cut: { kind: "edge" as const, fenceMm: 6, edges: BASE.cut.edges },
    };
    const plan = makePlan(input);
    const found = plan.findings.find(({ code }) => code === "thin-chip");
    if (found?.code !== "thin-chip") throw new Error("no thin chip");
    expect(found.chipMeanMm).toBeLessThan(found.chipMeanMinMm);
    expect(found.speedForChipRpm / (plan.speed.setting?.rpm ?? 0)).toBeCloseTo(
      found.chipMeanMm / found.chipMeanMinMm,
      9,
    );
  });

  it("an undercut bit is fed only, and what to waste first is said with its size", () => {
    const bit = {
      ...BASE.bit,
      form: { kind: "dovetail" as const, diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 12 },
    };
    expect(codes({ ...BASE, bit, cut: { ...BASE.cut, kind: "groove", depthMm: 9 } })).toEqual([
      "feed-only",
      "waste-first",
    ]);
  });

  it("end grain alone may tear out, and a plastic melts", () => {
    const endGrain = {
      ...BASE.cut,
      kind: "groove" as const,
      depthMm: 6,
      edges: [{ lengthMm: 300, grain: "end" as const }],
    };
    expect(codes({ ...BASE, cut: endGrain })).toEqual(["tear-out-risk"]);
    expect(codes({ ...BASE, wood: wood("acrylic") })).toEqual(["melts"]);
  });

  it("a cut that only one setting can make and that is too heavy for it is refused as such", () => {
    const { massG: _, ...unweighed } = BASE.bit;
    const bit = {
      ...unweighed,
      form: { kind: "flush-trim" as const, diameterMm: 19, cuttingLengthMm: 50, bearing: "tip" as const },
    };
    expect(
      codes({ ...BASE, bit, cut: { kind: "trim", overhangMm: 9, thicknessMm: 50, edges: BASE.cut.edges } }),
    ).toContain("too-heavy-at-once");
  });
});

describe("what not knowing costs", () => {
  it("the dearest uncertainty first, and none if measuring would change nothing", () => {
    const big = {
      ...BASE,
      bit: {
        form: { kind: "straight" as const, diameterMm: 60, cuttingLengthMm: 40 },
        shankDiameterMm: 12.7,
        wings: 2,
      },
    };
    const { uncertainties, setting } = makePlan(big).speed;
    expect(setting).toBeDefined();
    expect(uncertainties.map(({ gainRpm }) => gainRpm)).toEqual(
      [...uncertainties.map(({ gainRpm }) => gainRpm)].sort((a, b) => b - a),
    );
    expect(makePlan(BASE).speed.uncertainties).toEqual([]);
  });
});

describe("what measuring the run-out would gain", () => {
  // 0.27 kg: F = m·e·ω² = 30 N at 20 131 rpm with the 0.05 mm assumed, at 31 830 rpm with the 0.02 mm of a good collet.
  const heavy = {
    form: { kind: "straight" as const, diameterMm: 25, cuttingLengthMm: 25 },
    shankDiameterMm: 12.7,
    wings: 2,
    massG: 270,
  };
  const readings = [
    { mark: 1, rpm: 10000 },
    { mark: 2, rpm: 13000 },
    { mark: 2, rpm: 13000 },
    { mark: 3, rpm: 20900 },
  ];
  const router = { ...BASE.router, dial: { marks: { first: 1, last: 3 }, steps: 1, readings } };

  it("is the speed up to the next mark it would allow", () => {
    const { speed } = makePlan({
      ...BASE,
      bit: heavy,
      router,
      cut: { ...BASE.cut, kind: "groove", depthMm: 3 },
    });
    expect(speed.setting?.rpm).toBe(13000);
    expect(speed.uncertainties).toEqual([{ code: "run-out", gainRpm: 7900 }]);
  });
});

describe("every form of the rack at the cut it is made for", () => {
  const COMMON = { shankDiameterMm: 12.7, wings: 2 };
  const FORMS: readonly Form[] = [
    { kind: "straight", diameterMm: 19, cuttingLengthMm: 25 },
    { kind: "spiral-up-cut", diameterMm: 12.7, cuttingLengthMm: 32 },
    { kind: "spiral-down-cut", diameterMm: 12.7, cuttingLengthMm: 32 },
    { kind: "spiral-compression", diameterMm: 12.7, cuttingLengthMm: 32 },
    { kind: "flush-trim", diameterMm: 12.7, cuttingLengthMm: 25, bearing: "shank" },
    { kind: "rabbet", diameterMm: 35, cuttingLengthMm: 12.7, pilotDiameterMm: 12.7 },
    { kind: "slot-cutter", diameterMm: 47, slotWidthMm: 4, pilotDiameterMm: 22 },
    { kind: "chamfer", diameterMm: 38, angleDeg: 45, pilotDiameterMm: 12.7 },
    { kind: "v-groove", diameterMm: 19, angleDeg: 90 },
    { kind: "round-over", diameterMm: 38, radiusMm: 12.7 },
    { kind: "beading", diameterMm: 38, radiusMm: 9.5, pilotDiameterMm: 12.7, filletMm: 2 },
    { kind: "cove", diameterMm: 38, radiusMm: 12.7 },
    { kind: "core-box", diameterMm: 19, cuttingLengthMm: 12 },
    { kind: "bullnose", diameterMm: 38, radiusMm: 9.5 },
    { kind: "ogee", diameterMm: 38, radiusMm: 5, curve: "roman" },
    { kind: "ogee", diameterMm: 38, radiusMm: 5, curve: "classical" },
    { kind: "thumbnail", diameterMm: 50, profileHeightMm: 9, pilotDiameterMm: 12.7 },
    { kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 9 },
    { kind: "keyhole", diameterMm: 9.5, headHeightMm: 4, neckDiameterMm: 4.8, cuttingLengthMm: 11 },
    { kind: "t-slot", diameterMm: 19, headHeightMm: 8, neckDiameterMm: 9, cuttingLengthMm: 16 },
    { kind: "tongue", diameterMm: 41, tongueThicknessMm: 6, tongueLengthMm: 9.5, cuttingLengthMm: 22 },
    { kind: "groove", diameterMm: 41, grooveWidthMm: 6, grooveDepthMm: 9.5, cuttingLengthMm: 22 },
    { kind: "lock-mitre", diameterMm: 70, cuttingLengthMm: 25, lockDepthMm: 2 },
    { kind: "drawer-joint", diameterMm: 44, cuttingLengthMm: 16, stepMm: 6, stepHeightMm: 6 },
    { kind: "panel-raising-vertical", diameterMm: 38, faceWidthMm: 35, faceDepthMm: 10, face: "cove" },
    { kind: "surfacing", diameterMm: 50, cuttingLengthMm: 12 },
  ];

  it.each(FORMS.map((form) => [form.kind, form] as const))("%s", (_, form) => {
    const bit = { ...COMMON, form };
    const plan = makePlan({
      ...BASE,
      bit,
      cut: usualCut(bit),
      router: { ...BASE.router, inputPowerW: 2200 },
    });
    expect(plan.verdict).not.toBe("do-not-run");
    expect(plan.passes.length).toBeGreaterThan(0);
    expect(plan.passes.length).toBeLessThan(12);
  });
});
