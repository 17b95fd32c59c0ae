import {
  type Cut,
  DEFAULT_POLICY,
  DomainError,
  FORMS,
  type Form,
  formOutline,
  isUndercut,
  makePlan,
  outlineLengthMm,
  type Plan,
  type PlanInput,
  type Profile,
  type ProfilePoint,
  planProfiles,
  WOODS,
} from "@rimwise/domain";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { routers } from "./arbitraries.ts";
import { formsOf } from "./form-arbitraries.ts";

/** Chords of a profile keep within this of its arcs, mm: its default. */
const TOLERANCE_MM = 0.02;

const edges = [{ lengthMm: 500, grain: "long" as const }];
/** Thinner than the bit is tall, or thicker. */
const thicknesses = fc.double({ min: 3, max: 80, noNaN: true });
const share = (least: number) => fc.double({ min: least, max: 1, noNaN: true });

describe.each(FORMS)("any cut with any $kind bit", (summary) => {
  it("is refused by a field of the cut, or planned under every limit, with passes that add up to the profile", () => {
    fc.assert(
      fc.property(formsOf(summary).chain(inputsFor), (input) => {
        const plan = planned(input);
        if (plan === undefined) return;
        const { speed, limits, passes, verdict } = plan;
        for (const { rpm, strength, name } of speed.setting === undefined ? [] : limits) {
          const held = strength === "hard" ? speed.setting?.rpmHighest : speed.setting?.rpm;
          expect(held, name).toBeLessThanOrEqual(rpm);
        }
        expect(numbersIn(plan).every(Number.isFinite)).toBe(true);
        const profiles = planProfiles(input, plan);
        expect(profiles).toHaveLength(passes.length);
        expect(passes.length === 0).toBe(verdict === "do-not-run");
        // What is wasted first with another bit is not this plan's.
        const isWasted = input.cut.kind === "groove" && isUndercut(formOutline(input.bit.form));
        let removedMm2 = 0;
        passes.forEach(({ pass }, index) => {
          removedMm2 += pass.geometry.removedAreaMm2;
          const goneMm2 = missingMm2(profiles[index] ?? []);
          if (isWasted) expect(goneMm2).toBeGreaterThan(removedMm2 - slackMm2(input.bit.form));
          else expect(Math.abs(goneMm2 - removedMm2)).toBeLessThan(slackMm2(input.bit.form));
        });
      }),
      { numRuns: 60 },
    );
  });
});

/** A plan, or undefined if the cut cannot be made; then every fault names a field of the cut. */
function planned(input: PlanInput): Plan | undefined {
  try {
    return makePlan(input);
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    for (const { pointer } of error.faults) expect(pointer).toMatch(/^\/cut\//);
    return undefined;
  }
}

function inputsFor(form: Form): fc.Arbitrary<PlanInput> {
  const lengthMm = outlineLengthMm(formOutline(form));
  const rimMm = form.diameterMm / 2;
  const cuts: fc.Arbitrary<Cut> = fc.oneof(
    fc
      .record({
        kind: fc.constantFrom("edge" as const, "panel" as const, "joint" as const),
        up: share(0.1),
        in: share(0),
        thicknessMm: thicknesses,
      })
      .map((cut) => ({
        kind: cut.kind,
        edges,
        thicknessMm: cut.thicknessMm,
        heightMm: Math.max(0.1, cut.up * lengthMm),
        fenceMm: Math.min(100, cut.in * rimMm),
      })),
    fc
      .record({ kind: fc.constantFrom("edge" as const, "joint" as const), thicknessMm: thicknesses })
      .map((cut) => ({ ...cut, edges })),
    share(0.05).map((down) => ({
      kind: "groove" as const,
      edges,
      depthMm: Math.min(100, Math.max(0.1, down * lengthMm)),
    })),
    share(0.05).map((down) => ({
      kind: "rabbet" as const,
      edges,
      depthMm: Math.min(100, Math.max(0.1, down * lengthMm)),
    })),
    share(0.05).map((over) => ({ kind: "trim" as const, edges, overhangMm: Math.max(0.1, over * rimMm) })),
    share(0.05).map((down) => ({
      kind: "surface" as const,
      edges,
      depthMm: Math.max(0.1, down * 3),
      widthMm: 200,
    })),
  );
  return fc.record({
    bit: fc.record({
      form: fc.constant(form),
      shankDiameterMm: fc.constantFrom(6.35, 12.7),
      wings: fc.integer({ min: 1, max: 3 }),
    }),
    router: routers,
    mounting: fc.constantFrom("table" as const, "handheld" as const),
    wood: fc.constantFrom(...WOODS),
    cut: cuts,
    policy: fc.constant(DEFAULT_POLICY),
  });
}

/** What chords may miss: the tolerance along every arc, on both sides; and what typed hundredths may. */
function slackMm2(form: Form): number {
  const outline = formOutline(form);
  const arcsMm = outline.reduce(
    (sum, { kind, fromMm, toMm }) => sum + (kind === "arc" ? toMm - fromMm + form.diameterMm : 0),
    0,
  );
  // A bit that narrows by less than a hundredth counts as one that does not.
  return 2 * TOLERANCE_MM * arcsMm + 2 * 0.01 * outlineLengthMm(outline) + 1e-4;
}

/** The area of the whole block shown, less what is left. */
function missingMm2(profile: Profile): number {
  const points = profile.flatMap(({ boundary }) => boundary);
  const xs = points.map(({ xMm }) => xMm);
  const zs = points.map(({ zMm }) => zMm);
  // An edge is shown from x = 0, which nothing of it may reach; a groove from the same depth on the left.
  const leftMm = Math.min(0, ...xs);
  const block = (Math.max(...xs) - leftMm) * (Math.max(...zs) - Math.min(...zs));
  return (
    block -
    profile.reduce(
      (sum, piece) =>
        sum + areaOf(piece.boundary) - piece.holes.reduce((gone, hole) => gone + areaOf(hole), 0),
      0,
    )
  );
}

function areaOf(ring: readonly ProfilePoint[]): number {
  const twice = ring.reduce((sum, { xMm, zMm }, index) => {
    const next = ring[(index + 1) % ring.length] ?? { xMm, zMm };
    return sum + xMm * next.zMm - next.xMm * zMm;
  }, 0);
  return Math.abs(twice) / 2;
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}
