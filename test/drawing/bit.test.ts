import {
  type BitSetting,
  FORMS,
  type Form,
  formOutline,
  outlineLengthMm,
  radiiInUse,
  rimSpeedMPerS,
} from "@rimwise/domain";
import { PICTURES, svg } from "@rimwise/drawing";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formsOf } from "../properties/form-arbitraries.ts";
import { EXAMPLE_FORMS } from "../reference/example-forms.ts";
import { DRAWN_TO_MM, offOutlineMm, WRITTEN_MM } from "./compare.ts";
import { expectKept } from "./layout.ts";
import { readBack } from "./read-back.ts";

const SETTING: BitSetting = { heightMm: 9, fenceMm: 5, thicknessMm: 19 };

const drawn = (form: Form, units: "metric" | "imperial" = "metric") =>
  PICTURES.bit.draw({
    bit: { form, shankDiameterMm: 12.7, wings: 2, massG: 210, markedMaxRpm: 18_000 },
    name: "Rack 2, place 7",
    units,
    setting: SETTING,
    rpm: 12_000,
  });

describe("a bit is drawn as its outline is", () => {
  it.each(EXAMPLE_FORMS.map((form) => [form.kind, form] as const))("%s", (_kind, form) => {
    expectOutline(form);
    expectKept(drawn(form));
    expectKept(drawn(form, "imperial"));
  });

  it.each(FORMS.map((summary) => [summary.kind, summary] as const))("any %s", (_kind, summary) => {
    fc.assert(
      fc.property(formsOf(summary), (form) => {
        expectOutline(form);
        expectKept(drawn(form));
      }),
      { numRuns: Math.ceil(Number(process.env["PICTURE_CASES"] ?? 30) / 10) },
    );
  });
});

it("the part in use is what meets wood at the setting", () => {
  for (const form of EXAMPLE_FORMS) {
    const used = radiiInUse(formOutline(form), SETTING);
    const inUse = readBack(svg(drawn(form))).paths.find(({ of }) => of === "in-use");
    expect(inUse === undefined, form.kind).toBe(used === undefined);
    const radii = inUse?.rings.flat().map(({ xMm }) => Math.abs(xMm)) ?? [];
    const middles = inUse?.arcMiddles.map(({ xMm }) => Math.abs(xMm)) ?? [];
    if (used === undefined) continue;
    expect(Math.max(...radii, ...middles)).toBeLessThanOrEqual(used.greatestMm + DRAWN_TO_MM);
    expect(Math.min(...radii)).toBeGreaterThanOrEqual(used.leastMm - DRAWN_TO_MM);
  }
});

it("its dimensions measure what they say", () => {
  for (const form of EXAMPLE_FORMS) {
    const { measures } = readBack(svg(drawn(form)));
    expect(measures.map(({ name }) => name)).toContain("cutting-diameter");
    for (const { valueMm, tips, along, name } of measures) {
      const [one, other] = tips;
      if (one === undefined || other === undefined) throw new Error(`${name} has no arrows`);
      const drawnMm = along === "x" ? Math.abs(other.xMm - one.xMm) : Math.abs(other.yMm - one.yMm);
      expect(Math.abs(drawnMm - valueMm), name).toBeLessThan(DRAWN_TO_MM);
    }
  }
});

it("the scale of speeds rises with the radius: v = π·d·n", () => {
  const form: Form = { kind: "cove", diameterMm: 38.1, radiusMm: 12.7 };
  const { paths } = readBack(svg(drawn(form)));
  const outline = paths.find(({ of }) => of === "outline");
  const axis = paths.find(({ of }) => of === "speed-axis")?.rings[0];
  const rimMm = Math.max(...(outline?.rings.flat().map(({ xMm }) => xMm) ?? []));
  const atRim = axis?.at(-1)?.xMm ?? Number.NaN;
  // 38.1 mm at 12,000 rpm: π × 0.0381 m × 200 /s = 23.94 m/s.
  expect(atRim).toBeCloseTo(23.94, 2);
  expect(atRim).toBeCloseTo(rimSpeedMPerS(2 * rimMm, 12_000), 2);
  for (const tick of paths.filter(({ of }) => of === "speed-tick")) {
    expect(tick.rings[0]?.[0]?.xMm).toBeCloseTo(tick.number ?? Number.NaN, 2);
  }
});

it("shows no speed above what is marked on the bit", () => {
  const form: Form = { kind: "cove", diameterMm: 38.1, radiusMm: 12.7 };
  const bit = { form, shankDiameterMm: 12.7, wings: 2, markedMaxRpm: 18_000 };
  const { texts } = readBack(svg(PICTURES.bit.draw({ bit, name: "Rack 2", units: "metric", rpm: 24_000 })));
  expect(texts.join(" ")).toContain("At 18,000 rpm");
  expect(texts.join(" ")).not.toContain("24,000");
});

function expectOutline(form: Form): void {
  const outline = formOutline(form);
  const path = readBack(svg(drawn(form))).paths.find(({ of }) => of === "outline");
  expect(path).toBeDefined();
  const places = [...(path?.rings.flat() ?? []), ...(path?.arcMiddles ?? [])];
  for (const { xMm, yMm } of places) {
    expect(offOutlineMm(outline, Math.abs(xMm), yMm), `${form.kind} at ${yMm}`).toBeLessThan(
      DRAWN_TO_MM + WRITTEN_MM,
    );
  }
  const drawnMm = Math.max(...places.map(({ yMm }) => yMm)) - Math.min(...places.map(({ yMm }) => yMm));
  expect(Math.abs(drawnMm - outlineLengthMm(outline))).toBeLessThan(DRAWN_TO_MM);
  // Every corner of the outline is one of the drawing.
  for (const segment of outline) {
    for (const tMm of [segment.fromMm, segment.toMm]) {
      const isThere = places.some(({ yMm }) => Math.abs(yMm - tMm) < DRAWN_TO_MM);
      expect(isThere, `${form.kind}: ${tMm}`).toBe(true);
    }
  }
}
