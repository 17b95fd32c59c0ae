import { describe, expect, it } from "vitest";
import { describeFault } from "../wording/english/faults.ts";
import type { Bit } from "./bit.ts";
import { bitFaults } from "./faults.ts";
import { smallestUsableFaults } from "./plausible.ts";

// What such bits weigh, and what people type for it: common practice.
const WIDE: Bit = {
  form: { kind: "straight", diameterMm: 50.8, cuttingLengthMm: 31.75 },
  shankDiameterMm: 12.7,
  wings: 2,
};
/** 3.9 oz, as the trade states it. */
const PROFILE: Bit = {
  form: { kind: "round-over", diameterMm: 63.5, radiusMm: 25.4 },
  shankDiameterMm: 12.7,
  wings: 2,
};

const saidOf = (bit: Bit) =>
  bitFaults(bit).map((fault) => [fault.pointer, describeFault(fault).message, describeFault(fault).accepted]);

describe("a mass", () => {
  it.each<[string, number, string]>([
    ["ounces typed as grams", 9, "Did you mean 9 oz (255 g)?"],
    ["a digit short", 25, "Did you mean 250 g?"],
    ["a digit too many", 2550, "Did you mean 255 g?"],
    ["pounds typed as grams", 1.2, "Did you mean 1.2 lb (544 g)?"],
    ["nothing anybody meant", 100, "Weigh it again."],
  ])("of %s is refused with what its outline gives", (_name, massG, question) => {
    // π·(25.4² − 6.35²)·31.75 mm³ of ring filled by 0.42, a full hub and 38.1 mm of shank, 7.85 g/cm³: 268 g.
    expect(saidOf({ ...WIDE, massG })).toEqual([
      ["/massG", `Its outline gives about 268 g. ${question}`, "162 to 805"],
    ]);
  });

  it.each([
    ["a 2 in straight bit of 9 oz", { ...WIDE, massG: 255 }],
    ["a 2-1/2 in profile bit of 3.9 oz", { ...PROFILE, massG: 110.6 }],
    [
      "a spiral of solid carbide with a long shank",
      {
        form: { kind: "spiral-up-cut", diameterMm: 12.7, cuttingLengthMm: 38 },
        shankDiameterMm: 12.7,
        wings: 2,
        // A cylinder of 12.7 mm by 100 mm at 14.9 g/cm³, a fifth of the fluted part ground away.
        massG: 175,
      },
    ],
  ] satisfies [string, Bit][])("of %s is believed", (_name, bit) => {
    expect(bitFaults(bit)).toEqual([]);
  });

  it("is not held against an outline that has no answer", () => {
    const form = { kind: "straight", diameterMm: 900, cuttingLengthMm: 31.75 } as const;
    expect(bitFaults({ ...WIDE, form, massG: 9 }).map(({ pointer }) => pointer)).toEqual([
      "/form/diameterMm",
    ]);
  });
});

describe("a length that no workshop measures", () => {
  it.each<[string, Partial<Bit>, readonly string[]]>([
    [
      "a run-out of thousandths of an inch as millimetres",
      { runOutMm: 0.002 },
      [
        "/runOutMm",
        "No indicator of a workshop tells a run-out this small from none. Did you mean 0.002 in (0.051 mm)?",
        "0.005 to 1",
      ],
    ],
    [
      "no run-out at all",
      { runOutMm: 0 },
      [
        "/runOutMm",
        "No indicator of a workshop tells a run-out this small from none. Measure it again.",
        "0.005 to 1",
      ],
    ],
    [
      "a stick-out in inches",
      { stickOutMm: 0.375 },
      [
        "/stickOutMm",
        "No shank shows this much, or this little, between collet and head. Did you mean 0.375 in (9.525 mm)?",
        "1 to 57.15",
      ],
    ],
    [
      "a stick-out that leaves nothing in the collet",
      { stickOutMm: 58 },
      [
        "/stickOutMm",
        "No shank shows this much, or this little, between collet and head. Measure it again.",
        "1 to 57.15",
      ],
    ],
  ])("is refused: %s", (_name, given, said) => {
    expect(saidOf({ ...WIDE, ...given })).toEqual([said]);
  });

  it.each([{ runOutMm: 0.005 }, { stickOutMm: 1 }, { stickOutMm: 57.15 }])(
    "is believed at the edge: %o",
    (given) => {
      expect(bitFaults({ ...WIDE, ...given })).toEqual([]);
    },
  );

  it("is a smallest diameter of less than half, which would never hold the bit", () => {
    expect(smallestUsableFaults(WIDE.form, 25.4)).toEqual([]);
    const [fault] = smallestUsableFaults(WIDE.form, 1.9);
    expect(fault && describeFault(fault)).toEqual({
      message:
        "A bit is never sharpened this far, so it would never be taken out of use. Did you mean 1.9 in (48.26 mm)?",
      accepted: "at least 25.4",
    });
  });
});
