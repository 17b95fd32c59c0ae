import { describe, expect, it } from "vitest";
import type { Form } from "../bit/form/registry.ts";
import { formsThatWouldMake } from "./forms-that-would-make.ts";
import { wantedFrom } from "./wanted-from.ts";
import type { WantedSegment } from "./wanted-path.ts";

type Corner = readonly [x: number, z: number];
type Stretch = Corner | readonly [x: number, z: number, curve: "round" | "hollow", arcRadiusMm: number];

const THICK_MM = 19;

function proposalsFor(start: Corner, stretches: readonly Stretch[], toleranceMm = 0.1) {
  const segments = stretches.map(([xMm, zMm, curve, arcRadiusMm]): WantedSegment => {
    if (curve === undefined || arcRadiusMm === undefined) return { kind: "line", xMm, zMm };
    return { kind: "arc", xMm, zMm, curve, arcRadiusMm };
  });
  const [xMm, zMm] = start;
  return formsThatWouldMake(
    wantedFrom({ thicknessMm: THICK_MM, start: { xMm, zMm }, segments }),
    toleranceMm,
  );
}

const TAN15 = Math.tan((15 * Math.PI) / 180);

/** Walls by hand, and what must be among the forms that make them. */
const WALLS: readonly [name: string, start: Corner, stretches: readonly Stretch[], want: Partial<Form>][] = [
  [
    "a rabbet: a straight bit as wide as twice its depth",
    [9, 0],
    [
      [9, 6],
      [0, 6],
    ],
    { kind: "straight", diameterMm: 19.05 },
  ],
  [
    "a rabbet: a rabbet bit",
    [9, 0],
    [
      [9, 6],
      [0, 6],
    ],
    { kind: "rabbet", diameterMm: 30.7 },
  ],
  ["a chamfer of 45°", [4, 0], [[0, 4]], { kind: "chamfer", angleDeg: 45 }],
  [
    "a chamfer of 30° to the axis",
    [4 * Math.tan(Math.PI / 6), 0],
    [[0, 4]],
    { kind: "chamfer", angleDeg: 30 },
  ],
  ["a bevel: the point of a V", [5, 0], [[0, 5]], { kind: "v-groove", angleDeg: 90 }],
  [
    "a rounding of 1/4 in",
    [6.35, 0],
    [[0, 6.35, "round", 6.35]],
    { kind: "round-over", radiusMm: 6.35, diameterMm: 25.4 },
  ],
  [
    "a rounding with a step of 2 at the edge",
    [8, 0],
    [
      [2, 6, "round", 6],
      [0, 6],
    ],
    { kind: "round-over", radiusMm: 6, diameterMm: 12.7 + 16 },
  ],
  [
    "a rounding with steps of 2 at the edge and 1.5 at the face",
    [8, 0],
    [
      [8, 1.5],
      [2, 7.5, "round", 6],
      [0, 7.5],
    ],
    { kind: "beading", radiusMm: 6, filletMm: 1.5, diameterMm: 12.7 + 16 },
  ],
  ["a cove of 8", [8, 0], [[0, 8, "hollow", 8]], { kind: "cove", radiusMm: 8, diameterMm: 28.7 }],
  [
    "a cove whose middle lies in the corner: a round nose",
    [8, 0],
    [[0, 8, "hollow", 8]],
    { kind: "core-box", diameterMm: 16 },
  ],
  ["an edge that is rounded whole", [9.5, 0], [[9.5, 19, "round", 9.5]], { kind: "bullnose", radiusMm: 9.5 }],
  [
    "a rounding that runs into a hollow next to the face",
    [8, 0],
    [
      [4, 4, "hollow", 4],
      [0, 8, "round", 4],
    ],
    { kind: "ogee", radiusMm: 4, curve: "roman" },
  ],
  [
    "a panel's bevel with a tongue of 8 and a shoulder of 1.5",
    [38, 0],
    [
      [38, 1.5],
      [8, 1.5 + 30 * TAN15],
      [0, 1.5 + 30 * TAN15],
    ],
    { kind: "panel-raising", face: "bevel", tongueWidthMm: 8, shoulderHeightMm: 1.5 },
  ],
  [
    "the same, standing",
    [38, 0],
    [
      [8, 30 * TAN15],
      [0, 30 * TAN15],
    ],
    { kind: "panel-raising-vertical", face: "bevel", faceWidthMm: 30, tongueWidthMm: 8 },
  ],
];

describe("what to buy for", () => {
  it.each(WALLS)("%s", (_, start, stretches, want) => {
    const forms = proposalsFor(start, stretches).map(({ form }) => form);
    const close = Object.fromEntries(
      Object.entries(want).map(([name, value]) => [
        name,
        typeof value === "number" ? expect.closeTo(value, 6) : value,
      ]),
    );
    expect(forms).toContainEqual(expect.objectContaining(close));
  });

  it("a size that is sold comes before the size that was read, if it is within tolerance", () => {
    const [first, ...others] = proposalsFor([6.3, 0], [[0, 6.3, "round", 6.3]]);
    expect(first).toMatchObject({ isStandard: true, form: { kind: "round-over", radiusMm: 6.35 } });
    expect(others).toContainEqual(
      expect.objectContaining({
        isStandard: false,
        form: expect.objectContaining({ kind: "round-over", radiusMm: expect.closeTo(6.3, 9) }),
      }),
    );
  });

  it("a size that is sold is not proposed if it is off by more than the tolerance", () => {
    // 6.3 lies 0.05 from the nearest sixteenth and 0.2 from the nearest half.
    const radii = proposalsFor([6.3, 0], [[0, 6.3, "round", 6.3]], 0.01).flatMap(({ form }) =>
      form.kind === "round-over" ? [form.radiusMm] : [],
    );
    expect(radii).toEqual([expect.closeTo(6.3, 9)]);
  });

  it("every proposal leaves no more than the tolerance", () => {
    for (const [, start, stretches] of WALLS) {
      for (const { setting } of proposalsFor(start, stretches))
        expect(setting.greatestLeftMm).toBeLessThanOrEqual(0.1);
    }
  });

  it("nothing, when no form has such a wall", () => {
    expect(
      proposalsFor(
        [9, 0],
        [
          [7, 3],
          [4, 4],
          [3, 7],
          [0, 9],
        ],
      ),
    ).toEqual([]);
  });
});
