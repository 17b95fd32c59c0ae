import { type Form, formFaults, formOutline, type GivenSegment } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { brokenIn } from "./broken-outline.ts";

describe("a custom outline", () => {
  const line = (toMm: number, radiusMm: number): GivenSegment => ({ kind: "line", toMm, radiusMm });
  const arc = (
    toMm: number,
    radiusMm: number,
    arcRadiusMm: number,
    bulge: "outward" | "inward",
  ): GivenSegment => ({ kind: "arc", toMm, radiusMm, arcRadiusMm, bulge });
  const given = (
    diameterMm: number,
    startRadiusMm: number,
    segments: readonly GivenSegment[],
    pilotDiameterMm?: number,
  ): Form => ({
    kind: "custom",
    diameterMm,
    startRadiusMm,
    segments,
    ...(pilotDiameterMm !== undefined && { pilotDiameterMm }),
  });

  it.each<[string, Form]>([
    ["a point that widens to a parallel part", given(20, 0, [line(10, 10), line(25, 10)])],
    ["a flat tip, closed by a step from the axis", given(20, 0, [line(0, 10), line(15, 10)])],
    ["a hollow quarter circle", given(30, 5, [arc(10, 15, 10, "inward")])],
    [
      "a half circle whose ends were typed to hundredths",
      given(25.4, 12.7, [arc(12.71, 12.7, 6.35, "inward")]),
    ],
    ["an outward half circle, wider than both its ends", given(30, 10, [arc(10, 10, 5, "outward")])],
    ["an inward arc that just touches the axis", given(20, 5, [arc(10, 5, 5, "inward"), line(12, 10)])],
    ["a pilot as its own first part", given(40, 5, [line(4, 5), arc(19, 20, 15, "inward")], 10)],
  ])("is accepted: %s", (_, form) => {
    expect(formFaults(form)).toEqual([]);
    expect(brokenIn(formOutline(form))).toEqual([]);
  });

  it.each<[string, Form, string, string]>([
    [
      "a line that runs back to the tip",
      given(20, 10, [line(10, 10), line(5, 8)]),
      "/segments/1",
      "outline-turns-back",
    ],
    [
      "an arc past its own equator",
      given(20, 5, [arc(2, 10, 3, "outward")]),
      "/segments/0",
      "outline-turns-back",
    ],
    [
      "an arc too small for its ends",
      given(20, 5, [arc(10, 10, 3, "outward")]),
      "/segments/0",
      "outline-turns-back",
    ],
    [
      "an arc with both ends at one distance",
      given(20, 5, [arc(0, 10, 3, "outward")]),
      "/segments/0",
      "outline-turns-back",
    ],
    [
      "an arc that dips through the axis",
      given(20, 1, [arc(10, 1, 6, "inward"), line(12, 10)]),
      "/segments/0/arcRadiusMm",
      "out-of-range",
    ],
    [
      "an arc that bends in between two points on the axis, which no radius mends",
      given(20, 0, [arc(10, 0, 50, "inward"), line(10, 10), line(20, 10)]),
      "/segments/0/arcRadiusMm",
      "no-value-fits",
    ],
    [
      "an outline narrower than any bit, whatever diameter is given",
      given(20, 0.1, [line(10, 0.2)]),
      "/diameterMm",
      "no-value-fits",
    ],
    ["only a step, with no length", given(20, 0, [line(0, 10)]), "/segments/0/toMm", "out-of-range"],
    [
      "a bulge past the diameter",
      given(20, 10, [arc(10, 10, 5, "outward")]),
      "/diameterMm",
      "diameter-not-outline",
    ],
    [
      "a step out and back that has no length",
      given(40, 0, [line(0, 20), line(0, 5), line(9, 5)]),
      "/diameterMm",
      "diameter-not-outline",
    ],
    [
      "edges inside its pilot",
      given(40, 5, [line(4, 5), line(19, 20)], 16),
      "/pilotDiameterMm",
      "out-of-range",
    ],
    [
      "a pilot as wide as the bit",
      given(40, 5, [line(4, 5), line(19, 20)], 40),
      "/pilotDiameterMm",
      "pilot-too-large",
    ],
  ])("is refused: %s", (_, form, pointer, code) => {
    expect(formFaults(form).map((fault) => [fault.pointer, fault.code])).toContainEqual([pointer, code]);
  });

  it("that dips through the axis is refused with the radius that would not", () => {
    const [fault] = formFaults(given(20, 1, [arc(10, 1, 6, "inward"), line(12, 10)]));
    // Through (0, 1) and (10, 1), touching the axis at 5: 5² + 1² = 2·1·R.
    expect(fault).toMatchObject({ code: "out-of-range", values: { min: expect.closeTo(13, 9) } });
    expect(formFaults(given(20, 1, [arc(10, 1, 13.001, "inward"), line(12, 10)]))).toEqual([]);
  });
});
