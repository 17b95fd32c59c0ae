import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import { formOutline } from "../bit/form/registry.ts";
import type { Edge } from "./edge.ts";
import type { Cut } from "./kind/registry.ts";
import { cutSetup } from "./setup.ts";

const EDGES: readonly Edge[] = [{ lengthMm: 500, grain: "long" }];

const setupOf = (form: Bit["form"], cut: Cut) =>
  cutSetup({ form, shankDiameterMm: 12.7, wings: 2 }, formOutline(form), cut);

describe("what is taken if nothing is said", () => {
  it("a surface moves over by half the bit: 200 mm with a 50 mm bit are 1 + 150/25 = 7 rows", () => {
    const cut: Cut = { kind: "surface", edges: EDGES, depthMm: 1, widthMm: 200 };
    const setup = setupOf({ kind: "surfacing", diameterMm: 50, cuttingLengthMm: 10 }, cut);
    expect(setup.rows).toBe(7);
    expect(setup.fenceMm).toBeCloseTo(0, 12);
  });

  it("an undercut groove is wasted half a millimetre inside: 2·(9.525 − 12·tan 14° − 0.5) by 11.5 mm, rounded down to tenths", () => {
    const form = { kind: "dovetail", diameterMm: 19.05, angleDeg: 14, cuttingLengthMm: 12 } as const;
    const { waste } = setupOf(form, { kind: "groove", edges: EDGES, depthMm: 12 });
    expect(waste?.widthMm).toBeCloseTo(12, 9);
    expect(waste?.depthMm).toBeCloseTo(11.5, 9);
  });

  it("stock is 19 mm, about 3/4 in (common practice)", () => {
    const cut: Cut = { kind: "trim", edges: EDGES, overhangMm: 1 };
    const setup = setupOf(
      { kind: "flush-trim", diameterMm: 12.7, cuttingLengthMm: 25.4, bearing: "tip" },
      cut,
    );
    expect(setup.assumed).toEqual([
      { code: "thickness-assumed", thicknessMm: 19 },
      // A template of 1/4 in board, about 6 mm: common practice.
      { code: "template-assumed", thicknessMm: 6 },
    ]);
  });
});
