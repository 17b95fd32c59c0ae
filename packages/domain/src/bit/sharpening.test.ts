import { describe, expect, it } from "vitest";
import { DomainError, type Fault } from "../quantity/fault.ts";
import type { Bit } from "./bit.ts";
import { type Form, formOutline, formPilotRadiusMm } from "./form/registry.ts";
import { type Sharpening, sharpened, sharpeningsLeft } from "./sharpening.ts";

const STRAIGHT: Bit = {
  form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
  shankDiameterMm: 12.7,
  wings: 2,
  massG: 58,
  markedMaxRpm: 24_000,
};

const CUSTOM_FORM: Form<"custom"> = {
  kind: "custom",
  diameterMm: 20,
  startRadiusMm: 5,
  segments: [
    { kind: "line", toMm: 10, radiusMm: 10 },
    { kind: "line", toMm: 15, radiusMm: 10 },
  ],
};
const CUSTOM: Bit = { form: CUSTOM_FORM, shankDiameterMm: 12.7, wings: 2 };

function faultsOf(bit: Bit, sharpening: Sharpening): readonly Fault[] {
  try {
    sharpened(bit, sharpening);
  } catch (error) {
    if (error instanceof DomainError) return error.faults;
    throw error;
  }
  return [];
}

describe("a sharpening", () => {
  it("puts the new diameter and the new mass in place of the old, and leaves the rest", () => {
    expect(sharpened(STRAIGHT, { diameterMm: 12.4, massG: 57 })).toEqual({
      ...STRAIGHT,
      form: { kind: "straight", diameterMm: 12.4, cuttingLengthMm: 25.4 },
      massG: 57,
    });
  });

  it("keeps the weighed mass if it was not weighed again: heavier is the safe side", () => {
    expect(sharpened(STRAIGHT, { diameterMm: 12.4 }).massG).toBe(58);
  });

  it("weighs a bit that never was", () => {
    const { massG, ...unweighed } = STRAIGHT;
    expect(sharpened(unweighed, { massG: 70 }).massG).toBe(70);
  });

  it("takes a whole form of the same kind", () => {
    const form: Form = { kind: "straight", diameterMm: 12.5, cuttingLengthMm: 25 };
    expect(sharpened(STRAIGHT, { form }).form).toEqual(form);
  });

  it("takes what measuring misses for no growth, and keeps the larger figure", () => {
    expect(sharpened(STRAIGHT, { diameterMm: 12.74, massG: 59 })).toMatchObject({
      form: { diameterMm: 12.74 },
      massG: 59,
    });
  });

  it.each<[string, Bit, Sharpening, readonly object[]]>([
    [
      "a larger diameter",
      STRAIGHT,
      { diameterMm: 12.76 },
      [{ pointer: "/diameterMm", code: "grew-in-sharpening", values: { maxDiameterMm: 12.75 } }],
    ],
    [
      "a greater mass",
      STRAIGHT,
      { massG: 59.1 },
      [{ pointer: "/massG", code: "grew-in-sharpening", values: { maxMassG: 59 } }],
    ],
    [
      "a form both wider and longer",
      STRAIGHT,
      { form: { kind: "straight", diameterMm: 13, cuttingLengthMm: 26 } },
      [
        { pointer: "/form", code: "grew-in-sharpening", values: { maxDiameterMm: 12.75 } },
        { pointer: "/form", code: "grew-in-sharpening" },
      ],
    ],
    [
      "a form of another kind",
      STRAIGHT,
      { form: { kind: "v-groove", diameterMm: 12, angleDeg: 90 } },
      [{ pointer: "/form/kind", code: "unknown-choice", values: { names: ["straight"] } }],
    ],
    [
      "a diameter and a mass that no bit has",
      STRAIGHT,
      { diameterMm: Number.NaN, massG: 0 },
      [
        { pointer: "/diameterMm", code: "not-finite" },
        { pointer: "/massG", code: "out-of-range" },
      ],
    ],
    [
      "a diameter too small for its kind",
      { ...STRAIGHT, form: { kind: "dovetail", diameterMm: 6, angleDeg: 7, cuttingLengthMm: 6 } },
      { diameterMm: 3.5 },
      [{ pointer: "/diameterMm", code: "out-of-range" }],
    ],
    [
      "a new diameter alone, for an outline given by points",
      CUSTOM,
      { diameterMm: 19.8 },
      [{ pointer: "/form", code: "outline-needed" }],
    ],
    [
      "a profile that was sent and does not fit between pilot and rim",
      { ...STRAIGHT, form: { kind: "round-over", diameterMm: 38.1, radiusMm: 12.7, pilotDiameterMm: 12.7 } },
      {
        diameterMm: 37.8,
        form: { kind: "round-over", diameterMm: 37.8, radiusMm: 12.7, pilotDiameterMm: 12.7 },
      },
      [{ pointer: "/form/radiusMm", code: "profile-too-large" }],
    ],
  ])("refuses %s", (_, bit, sharpening, want) => {
    expect(faultsOf(bit, sharpening)).toMatchObject(want);
    expect(faultsOf(bit, sharpening)).toHaveLength(want.length);
  });

  it("takes a new outline given by points, all of it", () => {
    const form: Form = {
      ...CUSTOM_FORM,
      diameterMm: 19.8,
      segments: [
        { kind: "line", toMm: 9.9, radiusMm: 9.9 },
        { kind: "line", toMm: 14.9, radiusMm: 9.9 },
      ],
    };
    expect(sharpened(CUSTOM, { form }).form).toEqual(form);
    expect(faultsOf(CUSTOM, { form: { ...form, diameterMm: 19.5 } })).toMatchObject([
      { pointer: "/form/diameterMm", code: "diameter-not-outline" },
    ]);
  });
});

describe("how many sharpenings are left", () => {
  const policy = { sharpeningLossAssumedMm: 0.3 };
  const left = (diameterMm: number, ...losses: readonly number[]) => {
    const past = losses.map((lossMm) => ({ beforeMm: 20, afterMm: 20 - lossMm }));
    return sharpeningsLeft({ diameterMm, smallestDiameterMm: 12, past }, policy);
  };

  it("uses the policy's loss if there is no history", () => {
    expect(left(12.7)).toEqual({ left: 2, lossMm: 0.3, basis: "estimate" });
    expect(left(12.9).left).toBe(3);
  });

  it("uses the middle one of the bit's own losses", () => {
    const found = left(12.7, 0.1, 0.2, 0.9);
    expect(found).toMatchObject({ left: 3, basis: "own-history" });
    expect(found.lossMm).toBeCloseTo(0.2, 9);
  });

  it("never takes a loss for less than measuring can miss", () => {
    expect(left(12.7, 0, 0, -0.02)).toMatchObject({ lossMm: 0.05, left: 14 });
  });

  it("is none at or under the smallest diameter", () => {
    expect(left(12).left).toBe(0);
    expect(left(11, 0.1).left).toBe(0);
  });
});

// A bearing turns on its screw and is not ground with the cutter (common practice).
describe("a cutter sharpened on its bearing", () => {
  const round: Bit = {
    form: { kind: "round-over", diameterMm: 25.4, radiusMm: 6.35 },
    shankDiameterMm: 12.7,
    wings: 2,
  };

  it("keeps the bearing's diameter, and the curve that is left beside it", () => {
    const { form } = sharpened(round, { diameterMm: 25 });
    expect(formPilotRadiusMm(form)).toBeCloseTo(6.35, 9);
    expect(formOutline(form).at(-1)).toMatchObject({ arcRadiusMm: 6.15 });
  });

  it("names no field that was not sent", () => {
    const slot: Bit = {
      form: { kind: "rabbet", diameterMm: 13, cuttingLengthMm: 12, pilotDiameterMm: 12.7 },
      shankDiameterMm: 6.35,
      wings: 2,
    };
    const faults = faultsOf(slot, { diameterMm: 12.6 });
    expect(faults.length).toBeGreaterThan(0);
    for (const { pointer } of faults) expect(pointer).toBe("/diameterMm");
  });
});
