import { describe, expect, it } from "vitest";
import { DomainError, type Fault } from "../quantity/fault.ts";
import { wantedFrom } from "./wanted-from.ts";
import type { WantedPath, WantedSegment } from "./wanted-path.ts";

const THICK_MM = 19;

function along(
  start: readonly [number, number],
  ...corners: readonly (readonly [number, number])[]
): WantedPath {
  const [xMm, zMm] = start;
  return {
    thicknessMm: THICK_MM,
    start: { xMm, zMm },
    segments: corners.map(([x, z]): WantedSegment => ({ kind: "line", xMm: x, zMm: z })),
  };
}

function faultsOf(path: WantedPath): readonly Fault[] {
  try {
    wantedFrom(path);
  } catch (error) {
    if (error instanceof DomainError) return error.faults;
  }
  return [];
}

describe("a wanted profile as each way of presenting the work shows it", () => {
  it("a rabbet 9 deep and 6 wide: 9 from the edge up to 6, or 6 from the face up to 9", () => {
    const [flat, standing] = wantedFrom(along([9, 0], [9, 6], [0, 6])).walls;
    expect(flat).toMatchObject({ work: "flat", pieces: [{ toMm: 6, startDepthMm: 9 }, { startDepthMm: 0 }] });
    expect(standing).toMatchObject({
      work: "standing",
      face: "front",
      pieces: [{ toMm: 9, startDepthMm: 6, endDepthMm: 6 }, { startDepthMm: 0 }],
    });
  });

  it("a slot in the edge shows flat only, a groove in a face standing only", () => {
    const names = (path: WantedPath) => wantedFrom(path).walls.map(({ work, face }) => `${work} ${face}`);
    expect(names(along([0, 6], [8, 6], [8, 12], [0, 12]))).toEqual(["flat front"]);
    expect(names(along([30, 0], [30, 8], [24, 8], [24, 0]))).toEqual(["standing front"]);
    expect(names(along([24, 19], [24, 11], [30, 11], [30, 19]))).toEqual(["standing back"]);
  });

  it("an edge that is taken away whole leaves nothing to stand on", () => {
    expect(wantedFrom(along([2, 0], [2, 19])).walls.map(({ work }) => work)).toEqual(["flat"]);
  });

  it("a dovetail's flank that opens inward from the face shows from the edge, as part of a rabbet", () => {
    // Undercut as seen from the face, one depth at each height as seen from the edge.
    const walls = wantedFrom(along([5, 0], [9, 6], [0, 6])).walls;
    expect(walls.map(({ work }) => work)).toEqual(["flat"]);
  });

  it("corners typed a hundredth off a face lie on it", () => {
    const [flat] = wantedFrom(along([9, 0.01], [9, 6], [0.01, 6])).walls;
    expect(flat?.pieces[0]).toMatchObject({ fromMm: 0, toMm: 6 });
  });
});

describe("a wanted profile is refused, and the field named,", () => {
  it.each<[string, WantedPath, Partial<Fault>]>([
    [
      "when it doubles back from every side",
      along([9, 0], [9, 6], [12, 4], [12, 9], [0, 9]),
      { pointer: "/segments/1", code: "profile-doubles-back", values: { xMm: 9, zMm: 6 } },
    ],
    [
      "when it ends inside the stock",
      along([9, 0], [9, 6]),
      { pointer: "/segments/0", code: "profile-end-inside-stock" },
    ],
    ["when it starts inside the stock", along([9, 3], [0, 6]), { pointer: "/start" }],
    ["when it leaves the stock", along([9, 0], [9, 20], [0, 6]), { pointer: "/segments/0/zMm" }],
    ["when a corner is not a number", along([9, 0], [Number.NaN, 6], [0, 6]), { code: "not-finite" }],
    ["when it runs along the surface", along([0, 2], [0, 9]), { code: "profile-removes-nothing" }],
    ["when there is none", along([9, 0]), { pointer: "/segments", code: "out-of-range" }],
  ])("%s", (_, path, fault) => {
    expect(faultsOf(path)).toEqual([expect.objectContaining(fault)]);
  });

  it("when an arc is too small to reach", () => {
    const segment = { kind: "arc", xMm: 0, zMm: 6, arcRadiusMm: 4, curve: "round" } as const;
    const path = { thicknessMm: THICK_MM, start: { xMm: 6, zMm: 0 }, segments: [segment] };
    // Half of the chord from (6, 0) to (0, 6).
    const min = expect.closeTo(Math.SQRT2 * 3, 9);
    expect(faultsOf(path)).toEqual([
      { pointer: "/segments/0/arcRadiusMm", code: "out-of-range", values: { given: 4, min } },
    ]);
  });

  it("when an arc bulges out of the stock", () => {
    // A half circle from (0, 3) to (0, 9) about (0, 6): hollow it goes into the edge, round it leaves it.
    const segment = { kind: "arc", xMm: 0, zMm: 9, arcRadiusMm: 3, curve: "round" } as const;
    const path = { thicknessMm: THICK_MM, start: { xMm: 0, zMm: 3 }, segments: [segment] };
    expect(faultsOf(path)).toEqual([
      { pointer: "/segments/0", code: "profile-leaves-stock", values: { xMm: -3, zMm: 6 } },
    ]);
  });
});
