import { BIT_RANGES, bitFaults, bitSolid, formOutline, makePlan, removedAreaMm2 } from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planInputs } from "./arbitraries.ts";

const share = fc.double({ min: 0, max: 1, noNaN: true });
/** `pnpm fuzz` tries many more. */
const PLANS = Number(process.env["PROPERTY_PLANS"] ?? 400);
const RUNS = { numRuns: PLANS };
/** Of each plan in what is not known exactly. */
const TRUTHS = 100;
/** A person sets to this (ours). */
const MARK_MM = 0.1;

describe("what holds for every plan", () => {
  it("the highest possible speed never exceeds a hard limit, nor the nominal one a guide", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        const { speed, limits } = makePlan(input);
        if (speed.setting === undefined) return;
        for (const limit of limits) {
          const held = limit.strength === "hard" ? speed.setting.rpmHighest : speed.setting.rpm;
          expect(held, limit.name).toBeLessThanOrEqual(limit.rpm);
        }
      }),
      RUNS,
    );
  });

  it("a plan that must not be run gives no speed, no passes and no steps", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        const { verdict, speed, passes, steps } = makePlan(input);
        const isRefused = verdict === "do-not-run";
        expect(speed.setting === undefined).toBe(isRefused);
        expect(passes.length === 0).toBe(isRefused);
        expect(steps.length === 0).toBe(isRefused);
      }),
      RUNS,
    );
  });

  it("no faster mark would hold: the next one breaks a limit", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        const { setting } = makePlan(input).speed;
        if (setting?.nextFaster) expect(setting.nextFaster.breaks.length).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  it("the passes add up to the whole section to 1e-9", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        const { passes } = makePlan(input);
        const last = passes.at(-1);
        if (last === undefined) return;
        const sum = passes.reduce((total, { pass }) => total + pass.geometry.removedAreaMm2, 0);
        expect(sum).toBeGreaterThan(0);
        const whole = wholeSectionMm2(input);
        expect(Math.abs(sum - whole)).toBeLessThan(1e-9 * Math.max(1, whole));
      }),
      RUNS,
    );
  });

  it("roughing passes share the load: equal sections, or equally near to what holds them back, as nearly as they can be set", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        const passes = makePlan(input).passes.map(({ pass }) => pass);
        const rough = passes.filter(({ kind }) => kind === "rough");
        if (rough.length < 2) return;
        const sections = spread(rough.map(({ geometry }) => geometry.removedAreaMm2));
        // The last of passes that share a heaviness may get there with some to spare.
        const weights = spread(rough.slice(0, -1).map(({ heaviness }) => heaviness));
        // Each setting is at most a mark from where the shares are equal, and the bite of a pass lies between two settings.
        const marks = Math.max(0, ...rough.map(({ geometry }) => (2 * MARK_MM) / geometry.biteMm));
        const width = Math.max(...rough.map(({ geometry }) => geometry.engagedMm));
        const section = Math.min(...rough.map(({ geometry }) => geometry.removedAreaMm2));
        const settable = Math.max(2 * marks, (2 * MARK_MM * width) / section);
        expect(Math.min(sections, weights)).toBeLessThan(1e-2 + settable);
      }),
      RUNS,
    );
  });

  it("no pass goes over a constraint, and the finishing bite is light", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        const { passes } = makePlan(input);
        for (const { pass } of passes) {
          for (const { name, ratio } of pass.uses) expect(ratio, name).toBeLessThanOrEqual(1 + 1e-9);
        }
        const last = passes.at(-1)?.pass;
        if (last === undefined) return;
        expect(last.geometry.biteMm).toBeLessThanOrEqual(input.policy.finishBiteMm + 1e-9);
        if (last.kind === "finish") return;
        // None can be lighter than the roughing passes only if a weak bit takes so little that no setting lies between.
        expect(last.kind).toBe("rough");
        const bites = passes.map(({ pass }) => pass.geometry.biteMm);
        expect(Math.max(...bites)).toBeLessThanOrEqual(input.policy.finishBiteMm + 1e-9);
        expect(Math.min(...bites)).toBeLessThanOrEqual(3 * MARK_MM);
      }),
      RUNS,
    );
  });

  it("every number in a plan is finite", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        expect(numbersIn(makePlan(input)).filter((value) => !Number.isFinite(value))).toEqual([]);
      }),
      RUNS,
    );
  });

  it("the same input gives the same plan, to the byte", () => {
    fc.assert(
      fc.property(planInputs, (input) => {
        expect(JSON.stringify(makePlan(structuredClone(input)))).toBe(JSON.stringify(makePlan(input)));
      }),
      { numRuns: 300 },
    );
  });
});

/** Less is measured by nobody, and not believed. */
const LEAST_RUN_OUT_MM = 0.005;

describe("what is not known exactly", () => {
  it("is safe at every corner: whatever is true inside the tolerances, no hard limit is broken", () => {
    const truths = fc.tuple(
      planInputs,
      fc.array(fc.tuple(share, share, share), { minLength: TRUTHS, maxLength: TRUTHS }),
    );
    fc.assert(
      fc.property(truths, ([input, drawn]) => {
        const { setting } = makePlan(input).speed;
        if (setting === undefined) return;
        const { policy, bit } = input;
        for (const [speedShare, massShare, runOutShare] of drawn) {
          // The bit is as heavy and runs out as much as it may, the dial is as far off as it may.
          const estimate = bitSolid(bit).massG;
          const massG = bit.massG ?? estimate * (1 + policy.massEstimateToleranceRatio * (2 * massShare - 1));
          const runOutMm = bit.runOutMm ?? Math.max(LEAST_RUN_OUT_MM, policy.runOutAssumedMm * runOutShare);
          const trueRpm = setting.rpm + (setting.rpmHighest - setting.rpm) * speedShare;
          const known = { ...input, bit: { ...bit, massG, runOutMm } };
          for (const limit of makePlan(known).limits) {
            if (limit.strength === "hard")
              expect(trueRpm, limit.name).toBeLessThanOrEqual(limit.rpm * (1 + 1e-12));
          }
        }
      }),
      { numRuns: PLANS / 4 },
    );
  }, 120_000);
});

describe("what more of something does", () => {
  it("a larger diameter never gets a higher ceiling", () => {
    fc.assert(
      fc.property(planInputs, fc.double({ min: 1, max: 1.4, noNaN: true }), (input, factor) => {
        const larger = scaled(input, factor);
        fc.pre(larger !== undefined);
        // Scaled by 1, the same bit computed another way may differ in its last bits.
        expect(makePlan(larger).speed.ceilingRpm).toBeLessThanOrEqual(
          makePlan(input).speed.ceilingRpm * (1 + 1e-9),
        );
      }),
      RUNS,
    );
  });

  it("more mass never gets a kinder mounting", () => {
    const order = ["handheld", "handheld-with-care", "table-only"];
    fc.assert(
      fc.property(
        planInputs,
        fc.double({ min: 0.61, max: 1.8, noNaN: true }),
        fc.double({ min: 1, max: 1.66, noNaN: true }),
        (input, ofEstimate, factor) => {
          const massG = ofEstimate * bitSolid(input.bit).estimatedMassG;
          fc.pre(massG * factor <= BIT_RANGES.massG.max);
          const light = makePlan({ ...input, bit: { ...input.bit, massG } });
          const heavy = makePlan({ ...input, bit: { ...input.bit, massG: massG * factor } });
          expect(order.indexOf(heavy.mounting.allowed)).toBeGreaterThanOrEqual(
            order.indexOf(light.mounting.allowed),
          );
        },
      ),
      RUNS,
    );
  });
});

type Input = Parameters<typeof makePlan>[0];

/** The same cut with every length of the bit's profile grown, if that stays a bit of the rack. */
function scaled(input: Input, factor: number): Input | undefined {
  const { form } = input.bit;
  const grown = { ...form, diameterMm: form.diameterMm * factor };
  if (grown.kind === "core-box")
    grown.cuttingLengthMm = Math.max(grown.cuttingLengthMm, grown.diameterMm / 2);
  const bit = { ...input.bit, form: grown };
  return bitFaults(bit).length === 0 ? { ...input, bit } : undefined;
}

function wholeSectionMm2({ bit, cut }: Input): number {
  const outline = formOutline(bit.form);
  const heightMm = outline.at(-1)?.toMm ?? 0;
  const tipMm = outline.find(({ role }) => role === "edge")?.fromMm ?? 0;
  const pilotRadiusMm = outline.find(({ role }) => role === "pilot");
  const fenceMm = pilotRadiusMm?.kind === "line" ? pilotRadiusMm.startRadiusMm : 0;
  if (cut.kind === "groove") {
    return 2 * removedAreaMm2(outline, { heightMm: cut.depthMm, fenceMm: 0, thicknessMm: cut.depthMm });
  }
  if (cut.kind === "rabbet") {
    return removedAreaMm2(outline, { heightMm: tipMm + cut.depthMm, fenceMm, thicknessMm: cut.depthMm });
  }
  const thicknessMm = "thicknessMm" in cut ? (cut.thicknessMm ?? 19) : 19;
  return removedAreaMm2(outline, { heightMm, fenceMm, thicknessMm });
}

/** Relative difference of the greatest from the least. */
function spread(values: readonly number[]): number {
  return values.length < 2 ? 0 : Math.max(...values) / Math.min(...values) - 1;
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}
