import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import { usualCut } from "./usual-cut.ts";

const straight: Bit = {
  form: { kind: "straight", diameterMm: 20, cuttingLengthMm: 25 },
  shankDiameterMm: 12.7,
  wings: 2,
};

describe("the cut bits are compared by (ours)", () => {
  const run = [{ lengthMm: 1000, grain: "long" }];

  it("a groove a quarter of its diameter deep for a straight bit: 5 mm of 20 mm", () => {
    expect(usualCut(straight)).toEqual({ kind: "groove", edges: run, depthMm: 5 });
  });

  it("1.5 mm, about 1/16 in, for a flush-trim bit", () => {
    const form = { kind: "flush-trim", diameterMm: 12.7, cuttingLengthMm: 25.4, bearing: "tip" } as const;
    expect(usualCut({ ...straight, form })).toEqual({
      kind: "trim",
      edges: run,
      overhangMm: 1.5,
      thicknessMm: 25.4,
    });
  });

  it("the whole profile in stock of 150 mm for the rest", () => {
    const form = { kind: "round-over", diameterMm: 38.1, radiusMm: 12.7 } as const;
    expect(usualCut({ ...straight, form })).toEqual({ kind: "edge", edges: run, thicknessMm: 150 });
  });
});
