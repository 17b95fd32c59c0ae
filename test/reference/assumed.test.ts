import { describeAssumption, makePlan, showIn } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, EDGES, inputOf, STRAIGHT } from "./set-up-plans.ts";

const GROOVE = { kind: "groove", depthMm: 6, edges: EDGES } as const;

// What decides a plan and was taken for granted is said with its value (common practice: a teacher asks for it).
describe("what a plan takes for granted", () => {
  const input = inputOf(STRAIGHT, GROOVE);
  const codes = (given: typeof input) => makePlan(given).assumptions.map(({ code }) => code);

  it("lists the motor's power, the run-out and the stick-out that nobody gave", () => {
    const { inputPowerW: _, ...router } = input.router;
    const plan = makePlan({ ...input, router });
    expect(plan.assumptions).toContainEqual({ code: "motor-power-assumed", powerW: 800 });
    expect(plan.assumptions).toContainEqual({ code: "run-out-assumed", runOutMm: 0.05 });
    expect(plan.assumptions).toContainEqual({ code: "stick-out-assumed", stickOutMm: 10 });
  });

  it("and none that was given", () => {
    const known = { ...input, bit: { ...STRAIGHT, runOutMm: 0.03, stickOutMm: 8 } };
    for (const code of ["motor-power-assumed", "run-out-assumed", "stick-out-assumed"])
      expect(codes(known)).not.toContain(code);
  });

  it("lists the parts of a bit that were not measured", () => {
    const panel = bitOf({
      ...{
        kind: "panel-raising",
        diameterMm: 88.9,
        pilotDiameterMm: 12.7,
        profileHeightMm: 13,
        face: "cove",
      },
      backCutterDiameterMm: 40,
    });
    const sentences = makePlan(
      inputOf(panel, { kind: "panel", thicknessMm: 24, edges: EDGES }),
    ).assumptions.map((assumption) => describeAssumption(assumption, showIn("metric")));
    expect(sentences.join(" ")).toMatch(/step at the rim is taken as 1\.5 mm high/);
    expect(sentences.join(" ")).toMatch(/back-cutter is taken as 6\.35 mm high/);
  });
});

describe("a router with a range of speeds and no dial described", () => {
  const router = { minRpm: 10_000, maxRpm: 22_000, inputPowerW: 2000 };
  const panel = bitOf({
    ...{ kind: "panel-raising", diameterMm: 88.9, pilotDiameterMm: 12.7, profileHeightMm: 13, face: "cove" },
    tongueWidthMm: 8,
  });

  it("runs a large bit at its slowest speed, which is known", () => {
    const plan = makePlan({ ...inputOf(panel, { kind: "panel", thicknessMm: 20, edges: EDGES }), router });
    expect(plan.speed.setting).toMatchObject({ mark: undefined, rpm: 10_000 });
    expect(plan.steps).toContainEqual({ code: "set-slowest", rpm: 10_000 });
    expect(plan.assumptions.map(({ code }) => code)).toContain("dial-unknown");
  });

  it("runs a small one at its fastest, as before", () => {
    const small = bitOf({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 });
    const plan = makePlan({ ...inputOf(small, GROOVE), router });
    expect(plan.speed.setting).toMatchObject({ mark: undefined, rpm: 22_000 });
  });
});
