import { formOutline, type Plan, type PlanSections, planSections, removedAreaMm2 } from "@rimwise/domain";
import { PICTURES, svg } from "@rimwise/drawing";
import { describe, expect, it } from "vitest";
import { type Planned, randomPlans } from "../properties/random-plans.ts";
import { areaMm2, DRAWN_TO_MM, goneMm, isInside, offOutlineMm, offRingsMm, WRITTEN_MM } from "./compare.ts";
import { expectKept } from "./layout.ts";
import { type Drawn, type DrawnPath, readBack } from "./read-back.ts";

const CASES = Number(process.env["PICTURE_CASES"] ?? 30);
const KEPT_MM = DRAWN_TO_MM + WRITTEN_MM;
/** Heights at which a wall is looked at. */
const PLACES = 60;

const plans = [...randomPlans(17, CASES)];
const runnable = plans.flatMap(({ input, plan }) => {
  const sections = planSections(input, plan);
  return sections === undefined
    ? []
    : [{ input, plan, sections, drawn: readBack(svg(drawnOf({ input, plan }))) }];
});

type Case = (typeof runnable)[number];

function drawnOf({ input, plan }: Planned, units: "metric" | "imperial" = "metric") {
  return PICTURES["set-up"].draw({ input, plan, name: "Drawer fronts, walnut", units });
}

describe(`of ${CASES} random plans`, () => {
  it("some may be run, and some may not", () => {
    expect(runnable.length).toBeGreaterThan(CASES / 4);
    expect(runnable.length).toBeLessThan(CASES);
  });

  it("the bit stands at its last setting", () => {
    for (const each of runnable) {
      const outline = formOutline(each.input.bit.form);
      const { heightMm } = lastOf(each.sections);
      const places = pathsOf(each.drawn, "outline").flatMap(({ rings, arcMiddles }) => [
        ...rings.flat(),
        ...arcMiddles,
      ]);
      expect(places.length).toBeGreaterThan(0);
      for (const { xMm, yMm } of places) {
        expect(
          offOutlineMm(outline, Math.abs(xMm - axisMm(each)), heightMm - yMm),
          nameOf(each),
        ).toBeLessThan(KEPT_MM);
      }
    }
  });

  it("what is left is what the passes leave", () => {
    for (const each of runnable) expectWall(each, ringsOf(each.drawn, "left"), each.sections.settings.length);
  });

  it("each pass is the layer that it takes", () => {
    for (const each of runnable) {
      const { sections, input } = each;
      const outline = formOutline(input.bit.form);
      sections.settings.forEach((_, index) => {
        const number = index + 1;
        const layer = each.drawn.paths.find((path) => path.of === "pass" && path.number === number);
        expect(layer, nameOf(each)).toBeDefined();
        const before = sections.settings.slice(0, index);
        const half = Math.ceil((layer?.rings.length ?? 0) / 2);
        if (sections.sides === 1) {
          const [had, has] = [layer?.rings[0], layer?.rings[half]];
          // Where every pass takes more than the ones before it, the section follows from the setting alone.
          const goneBefore =
            before.length === 0 ? 0 : removedAreaMm2(outline, before.at(-1) ?? lastOf(sections));
          const gone = removedAreaMm2(outline, sections.settings[index] ?? lastOf(sections));
          const isRising = goneBefore <= gone;
          if (isRising && had !== undefined && has !== undefined && !isUndercutBetween(each, index)) {
            const wallMm = 2 * (sections.thicknessMm + Math.abs(reachOf(had) - leastOf(had)));
            expect(Math.abs(areaMm2(had) - areaMm2(has) - (gone - goneBefore)), nameOf(each)).toBeLessThan(
              wallMm * KEPT_MM,
            );
          }
        }
        expectWall(each, layer?.rings.slice(half) ?? [], number);
      });
    }
  });

  it("a line from a number ends in the layer of that pass", () => {
    const dots = runnable.flatMap((each) => pathsOf(each.drawn, "leader-dot").map((dot) => ({ each, dot })));
    expect(dots.length).toBeGreaterThan(0);
    for (const { each, dot } of dots) {
      const layer = each.drawn.paths.find(({ of, number }) => of === "pass" && number === dot.number);
      const corners = dot.rings.flat();
      const middle = {
        xMm: meanOf(corners.map(({ xMm }) => xMm)),
        yMm: meanOf(corners.map(({ yMm }) => yMm)),
      };
      expect(isInside(layer?.rings ?? [], middle), `${nameOf(each)}, pass ${dot.number}`).toBe(true);
    }
  });

  it("the height is measured from table or base to the cutter, and is what the steps say", () => {
    for (const each of runnable) {
      const step = each.plan.steps.findLast(
        ({ code }) => code === "set-height" || code === "set-height-over-work",
      );
      const said =
        step?.code === "set-height"
          ? step.cutterMm
          : step?.code === "set-height-over-work"
            ? step.depthMm
            : undefined;
      if (said === undefined || said < DRAWN_TO_MM) continue;
      const [low, high] = tipsOf(each, "height", said, "yMm");
      const plane = step?.code === "set-height" ? -each.sections.underlayMm : 0;
      expect(Math.abs(low - plane), nameOf(each)).toBeLessThan(KEPT_MM);
      expect(Math.abs(high - (lastOf(each.sections).heightMm - each.sections.edgesFromMm))).toBeLessThan(
        KEPT_MM,
      );
      const ground = [...pathsOf(each.drawn, "table"), ...pathsOf(each.drawn, "base")];
      if (each.plan.guide === "rails") continue;
      expect(
        ground.flatMap(({ rings }) => rings.flat()).some(({ yMm }) => Math.abs(yMm - plane) < KEPT_MM),
      ).toBe(true);
    }
  });

  it("the fence is measured from the bit's axis to its face, and is what the steps say", () => {
    let measured = 0;
    for (const each of runnable) {
      const step = each.plan.steps.findLast(({ code }) => code === "set-fence");
      if (step?.code !== "set-fence" || Math.abs(step.fenceMm) < DRAWN_TO_MM) continue;
      measured += 1;
      const [low, high] = tipsOf(each, "fence", Math.abs(step.fenceMm), "xMm");
      const faces = [...pathsOf(each.drawn, "fence"), ...pathsOf(each.drawn, "edge-guide")];
      const faceMm = Math.max(...faces.flatMap(({ rings }) => rings.flat()).map(({ xMm }) => xMm));
      const [axis, face] = step.fenceMm > 0 ? [low, high] : [high, low];
      expect(Math.abs(face - faceMm), nameOf(each)).toBeLessThan(KEPT_MM);
      expect(Math.abs(axis - axisMm(each))).toBeLessThan(KEPT_MM);
    }
    expect(measured).toBeGreaterThan(0);
  });

  it("what the test piece must measure is drawn as long as it is", () => {
    for (const each of runnable) {
      const { depthMm, widthMm } = each.plan.testPiece ?? {};
      if (depthMm !== undefined && depthMm > DRAWN_TO_MM) tipsOf(each, "test-depth", depthMm, "yMm");
      if (widthMm !== undefined && widthMm > DRAWN_TO_MM) tipsOf(each, "test-width", widthMm, "xMm");
    }
  });

  it("no text overlaps another or leaves the page, in either system of units", () => {
    for (const each of plans) {
      expectKept(drawnOf(each));
      expectKept(drawnOf(each, "imperial"));
    }
  });

  it("one that must not be run shows no setting, and says why", () => {
    const refused = plans.filter(({ plan }) => plan.verdict === "do-not-run");
    expect(refused.length).toBeGreaterThan(0);
    for (const each of refused) {
      const { measures, paths, texts } = readBack(svg(drawnOf(each)));
      expect(measures).toEqual([]);
      expect(paths.map(({ of }) => of)).toEqual(["refusal"]);
      expect(texts).toContain("Do not run this cut.");
      expect(texts.join(" ")).not.toMatch(/\d rpm|Set the/);
    }
  });
});

function lastOf({ settings }: PlanSections) {
  const last = settings.at(-1);
  if (last === undefined) throw new Error("a plan that may be run has passes");
  return last;
}

/** The bit's axis at the last run: behind the fence of an edge, over from the middle of a groove in runs. */
function axisMm({ sections, plan }: { readonly sections: PlanSections; readonly plan: Plan }): number {
  return sections.sides === 1 ? -lastOf(sections).fenceMm : (plan.passes.at(-1)?.pass.lastRunOverMm ?? 0) / 2;
}

function pathsOf({ paths }: Drawn, name: string): DrawnPath[] {
  return paths.filter(({ of, group }) => of === name && group === "section");
}

function ringsOf(drawn: Drawn, name: string) {
  return pathsOf(drawn, name).flatMap(({ rings }) => rings);
}

/** Places of the true wall lie on what was drawn; where the wall steps or slopes, the nearest place of it counts. */
function expectWall(each: Case, rings: DrawnPath["rings"], passes: number): void {
  const { sections, input } = each;
  const outline = formOutline(input.bit.form);
  const settings = sections.settings.slice(0, passes);
  for (let place = 0; place < PLACES; place += 1) {
    const zMm = ((place + 0.37) / PLACES) * sections.thicknessMm;
    const xMm = goneMm(outline, settings, zMm);
    if (xMm <= 0) continue;
    for (const side of sections.sides === 1 ? [1] : [1, -1]) {
      expect(offRingsMm(rings, { xMm: side * xMm, yMm: zMm }), `${nameOf(each)} at ${zMm}`).toBeLessThan(
        KEPT_MM,
      );
    }
  }
}

/** The ends of a dimension in rising order, after checking that it says and draws so much. */
function tipsOf(each: Case, name: string, wantMm: number, axis: "xMm" | "yMm"): readonly [number, number] {
  const measure = each.drawn.measures.find((drawn) => drawn.name === name);
  expect(measure?.valueMm, `${name} of ${nameOf(each)}`).toBeDefined();
  expect(Math.abs(Math.abs(measure?.valueMm ?? 0) - wantMm)).toBeLessThan(1e-9);
  const [low = 0, high = 0] = (measure?.tips ?? []).map((tip) => tip[axis]).sort((one, other) => one - other);
  expect(Math.abs(high - low - wantMm), `${name} of ${nameOf(each)}`).toBeLessThan(KEPT_MM);
  return [low, high];
}

/** Whether an earlier pass took wood that a later setting alone would not: then sections do not add up. */
function isUndercutBetween({ sections, input }: Case, index: number): boolean {
  const outline = formOutline(input.bit.form);
  const own = sections.settings[index];
  return Array.from({ length: PLACES }, (_, place) => ((place + 0.5) / PLACES) * sections.thicknessMm).some(
    (zMm) =>
      goneMm(outline, sections.settings.slice(0, index), zMm) >
      (own === undefined ? 0 : goneMm(outline, [own], zMm)) + DRAWN_TO_MM,
  );
}

function meanOf(values: readonly number[]): number {
  return (Math.min(...values) + Math.max(...values)) / 2;
}

function reachOf(ring: DrawnPath["rings"][number]): number {
  return Math.max(...ring.map(({ xMm }) => xMm));
}

function leastOf(ring: DrawnPath["rings"][number]): number {
  return Math.min(...ring.map(({ xMm }) => xMm));
}

function nameOf({ input, plan }: Planned): string {
  return `${input.cut.kind} with ${input.bit.form.kind}, ${plan.guide}`;
}
