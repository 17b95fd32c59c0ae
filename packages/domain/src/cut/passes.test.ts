import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import type { Form } from "../bit/form/registry.ts";
import { bitSolid } from "../bit/solid.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { DomainError } from "../quantity/fault.ts";
import { woodById } from "../wood/registry.ts";
import { type ConstraintContext, loadedPass } from "./constraints.ts";
import { PASSES_MAX } from "./fewest-passes.ts";
import type { Cut } from "./kind/registry.ts";
import { passBetween } from "./pass-geometry.ts";
import { findPasses } from "./passes.ts";
import { cutSetup } from "./setup.ts";

const cherry = woodById("black-cherry");
if (cherry === undefined) throw new Error("no cherry");
const wood = cherry;
const edges = [{ lengthMm: 400, grain: "long" as const }];

function contextFor(bit: Bit, cut: Cut, rest: Partial<ConstraintContext> = {}): ConstraintContext {
  const solid = bitSolid(bit);
  return {
    bit,
    solid,
    router: { minRpm: 10000, maxRpm: 22000, inputPowerW: 1800 },
    wood,
    grain: "long",
    setup: cutSetup(bit, solid.outline, cut),
    mounting: "table",
    policy: DEFAULT_POLICY,
    ...rest,
  };
}

const bitOf = (form: Form, shankDiameterMm = 12.7): Bit => ({ form, shankDiameterMm, wings: 2 });

/** A small generator of its own, so that the 500 cases are the same on every machine (Park and Miller's constants). */
function generator(seed: number): (min: number, max: number) => number {
  let state = seed;
  return (min, max) => {
    state = (state * 48271) % 2147483647;
    return min + (max - min) * (state / 2147483647);
  };
}

function randomCase(random: (min: number, max: number) => number): ConstraintContext {
  const pilotDiameterMm = random(10, 20);
  const kinds: readonly (() => [Form, Cut])[] = [
    () => {
      const diameterMm = random(4, 40);
      const depthMm = random(2, 25);
      return [
        { kind: "straight", diameterMm, cuttingLengthMm: 26 },
        { kind: "groove", depthMm, edges },
      ];
    },
    () => {
      const radiusMm = random(3, 25);
      const diameterMm = pilotDiameterMm + 2 * radiusMm;
      return [
        { kind: random(0, 1) < 0.5 ? "cove" : "round-over", diameterMm, radiusMm },
        { kind: "edge", edges, thicknessMm: 30 },
      ];
    },
    () => {
      const faceMm = random(18, 38);
      const diameterMm = pilotDiameterMm + 2 * faceMm;
      const profileHeightMm = random(5, 14);
      return [
        {
          kind: "panel-raising",
          diameterMm,
          pilotDiameterMm,
          profileHeightMm,
          face: random(0, 1) < 0.5 ? "cove" : "ogee",
        },
        { kind: "panel", edges, thicknessMm: 22 },
      ];
    },
    () => {
      const diameterMm = random(10, 50);
      const thicknessMm = random(10, 40);
      return [
        { kind: "straight", diameterMm, cuttingLengthMm: 50 },
        { kind: "edge", edges, thicknessMm },
      ];
    },
  ];
  const [form, cut] = (kinds[Math.floor(random(0, kinds.length - 1e-9))] ?? kinds[0])?.() ?? [];
  if (form === undefined || cut === undefined) throw new Error("no kind");
  return contextFor(bitOf(form, random(0, 1) < 0.3 ? 6.35 : 12.7), cut, {
    mounting: random(0, 1) < 0.5 ? "table" : "handheld",
    router: { minRpm: 10000, maxRpm: 22000, inputPowerW: random(500, 2400) },
  });
}

/** The fewest roughing passes over every division of the travel into 80 steps, by dynamic programming. */
function fewestByTrying(context: ConstraintContext, finishMm: number): number {
  const { setup, solid } = context;
  const steps = 80;
  const at = (index: number) => setup.travelMm + ((finishMm - setup.travelMm) * index) / steps;
  const fewest: number[] = [0];
  for (let to = 1; to <= steps; to += 1) {
    let best = Number.POSITIVE_INFINITY;
    for (let from = to - 1; from >= 0; from -= 1) {
      const before = fewest[from] ?? Number.POSITIVE_INFINITY;
      if (before + 1 >= best) continue;
      if (loadedPass(context, passBetween(solid.outline, setup, at(from), at(to))).heaviness <= 1)
        best = before + 1;
    }
    fewest.push(best);
  }
  return fewest[steps] ?? Number.POSITIVE_INFINITY;
}

describe("the passes of a cut", () => {
  it("are never more than trying every division finds, on 500 cases", () => {
    const random = generator(20261125);
    let compared = 0;
    for (let index = 0; index < 500; index += 1) {
      const context = randomCase(random);
      const passes = findPasses(context);
      // What is refused needs more passes than anybody would make.
      const rough = passes?.filter(({ kind }) => kind === "rough").length ?? PASSES_MAX;
      if (context.setup.travelMm <= context.policy.finishBiteMm) continue;
      const finishMm = passes?.at(-1)?.geometry.biteMm ?? context.policy.finishBiteMm;
      expect(rough, JSON.stringify(context.bit.form)).toBeLessThanOrEqual(fewestByTrying(context, finishMm));
      compared += 1;
    }
    expect(compared).toBeGreaterThan(450);
  });

  it("take a small router more of them than a strong one", () => {
    const form: Form = {
      kind: "panel-raising",
      diameterMm: 88.9,
      pilotDiameterMm: 12.7,
      profileHeightMm: 12,
      face: "cove",
    };
    const cut: Cut = { kind: "panel", edges, thicknessMm: 20 };
    const count = (inputPowerW: number) =>
      findPasses(contextFor(bitOf(form), cut, { router: { minRpm: 10000, maxRpm: 22000, inputPowerW } }))
        ?.length ?? 99;
    expect(count(600)).toBeGreaterThan(count(2200));
  });

  it("of a groove are no deeper than half the bit's diameter", () => {
    const passes = findPasses(
      contextFor(bitOf({ kind: "straight", diameterMm: 6.35, cuttingLengthMm: 19 }, 6.35), {
        kind: "groove",
        depthMm: 12,
        edges,
      }),
    );
    expect(passes?.length).toBe(5);
    for (const { geometry } of passes ?? []) expect(geometry.biteMm).toBeLessThanOrEqual(3.175 + 1e-9);
  });

  it("are one if the whole cut is as light as the finishing bite", () => {
    const passes = findPasses(
      contextFor(bitOf({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25 }), {
        kind: "groove",
        depthMm: 0.6,
        edges,
      }),
    );
    expect(passes?.map(({ kind }) => kind)).toEqual(["finish"]);
  });
});

describe("cuts that only their own setting can make", () => {
  const dovetail = bitOf({ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 12 });

  it("a dovetail groove is wasted first, a clearance inside its narrowest, then cut at once", () => {
    const context = contextFor(dovetail, { kind: "groove", depthMm: 9.5, edges });
    const narrowestMm = 12.7 - 2 * 9.5 * Math.tan((14 * Math.PI) / 180);
    expect(context.setup).toMatchObject({ approach: "once", waste: { depthMm: 9 } });
    // Rounded down to what a person can set.
    const wasteMm = Math.floor((narrowestMm - 1) * 10) / 10;
    expect(context.setup.waste?.widthMm).toBeCloseTo(wasteMm, 9);
    const [only, ...others] = findPasses(context) ?? [];
    expect(others).toEqual([]);
    const trapezoidMm2 = ((12.7 + narrowestMm) / 2) * 9.5;
    expect(only?.geometry.removedAreaMm2).toBeCloseTo(trapezoidMm2 - wasteMm * 9, 9);
  });

  it("a bullnose is walked in by the fence at its one height", () => {
    const context = contextFor(bitOf({ kind: "bullnose", diameterMm: 38.1, radiusMm: 9.5 }), {
      kind: "edge",
      fenceMm: 9.55,
      edges,
      thicknessMm: 19,
    });
    expect(context.setup.approach).toBe("fence");
    const passes = findPasses(context) ?? [];
    expect(new Set(passes.map(({ heightMm }) => heightMm)).size).toBe(1);
    expect(passes.at(-1)?.fenceMm).toBe(9.55);
  });

  it("an overhang is trimmed in one run, and only with a bearing of the bit's own size", () => {
    const bit = bitOf({ kind: "flush-trim", diameterMm: 12.7, cuttingLengthMm: 25.4, bearing: "tip" });
    const context = contextFor(bit, { kind: "trim", overhangMm: 2, thicknessMm: 19, edges });
    expect(findPasses(context)?.map(({ geometry }) => geometry.removedAreaMm2)).toEqual([38]);
    expect(() =>
      contextFor(bitOf({ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 }), {
        kind: "trim",
        overhangMm: 2,
        edges,
      }),
    ).toThrow(DomainError);
  });

  it("a surface is planed in overlapping rows", () => {
    const bit = bitOf({ kind: "surfacing", diameterMm: 50, cuttingLengthMm: 12 });
    const context = contextFor(bit, { kind: "surface", depthMm: 2, widthMm: 300, stepOverRatio: 0.4, edges });
    // The first row is a whole diameter wide, each further one 20 mm: 1 + 250/20, rounded up.
    expect(context.setup.rows).toBe(14);
    expect(findPasses(context)?.at(-1)?.geometry.removedAreaMm2).toBeCloseTo(20 * 0.8, 9);
  });
});
