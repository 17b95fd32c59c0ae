import {
  type Bit,
  type Cut,
  DEFAULT_POLICY,
  FORMS,
  type Mounting,
  makePlan,
  woodById,
} from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { EXAMPLE_FORMS } from "./example-forms.ts";
import {
  bitOf,
  codesOf,
  EDGES,
  planOf,
  precautionsOf,
  ROUND_OVER,
  STRAIGHT,
  said,
  spoken,
} from "./set-up-plans.ts";

// Forms that take a table whatever they weigh: common practice.
describe("a bit that takes a table", () => {
  it("is one of these", () => {
    const forTable = FORMS.flatMap(({ kind, isForTableOnly }) => (isForTableOnly === true ? [kind] : []));
    expect(forTable.sort()).toEqual(
      [
        "cope",
        "drawer-joint",
        "finger-joint",
        "lock-mitre",
        "panel-raising-vertical",
        "stick",
        "tongue",
      ].sort(),
    );
  });

  it("is refused by hand, and on the table is no large bit for that", () => {
    const bit: Bit = {
      ...bitOf({ kind: "finger-joint", diameterMm: 36, fingers: 3, fingerHeightMm: 5, fingerDepthMm: 8 }),
      massG: 90,
    };
    const cut: Cut = { kind: "joint", thicknessMm: 19, edges: EDGES };
    expect(codesOf(planOf(bit, cut, "handheld"))).toContain("table-only");
    expect(codesOf(planOf(bit, cut))).not.toContain("large-bit");
    expect(precautionsOf(bit, cut)).not.toContain("check-collet-again");
  });
});

// A bit wider than a hand may run is refused on rails too. Sizes: common practice.
describe("a surface", () => {
  const surfacer = (diameterMm: number) => bitOf({ kind: "surfacing", diameterMm, cuttingLengthMm: 12.7 });
  const cut: Cut = { kind: "surface", depthMm: 1, widthMm: 300, edges: EDGES };

  it("is planed by a 2 in bit carried on rails, with care", () => {
    const plan = planOf(surfacer(50.8), cut, "handheld");
    expect(plan).toMatchObject({ verdict: "run-with-care", guide: "rails" });
    expect(codesOf(plan)).toContain("carried-on-rails");
    expect(spoken(surfacer(50.8), cut, "handheld")).toMatch(/Wedge the work so that it cannot rock/);
  });

  it("is not planed by one beyond 2-1/2 in", () => {
    expect(codesOf(planOf(surfacer(70), cut, "handheld"))).toContain("table-only");
  });
});

// Only a bit that cuts at its end may be plunged: common practice.
describe("a stopped groove", () => {
  const cut: Cut = { kind: "groove", depthMm: 6, isStopped: true, edges: EDGES };

  it.each<[string, boolean | undefined, RegExp, boolean]>([
    ["known to cut at its end", true, /plunge at the start/, false],
    ["known not to", false, /Never plunge this bit: enter from a drilled hole/, false],
    ["of which nobody says", undefined, /Never plunge this bit: enter from a drilled hole/, true],
  ])("by hand with a straight bit %s", (_, isEndCutting, says, isAssumed) => {
    const bit: Bit = isEndCutting === undefined ? STRAIGHT : { ...STRAIGHT, isEndCutting };
    expect(spoken(bit, cut, "handheld")).toMatch(says);
    expect(planOf(bit, cut, "handheld").assumptions.some(({ code }) => code === "end-cutting-unknown")).toBe(
      isAssumed,
    );
  });

  it("on a table starts over a drilled hole too, unless the bit cuts at its end", () => {
    expect(spoken(STRAIGHT, cut)).toMatch(/drill a hole as wide as the bit/);
    expect(spoken({ ...STRAIGHT, isEndCutting: true }, cut)).toMatch(/lower the work onto the bit/);
  });

  it("is plunged with a bit that comes to a point", () => {
    const point = bitOf({ kind: "v-groove", diameterMm: 12.7, angleDeg: 90 });
    expect(spoken(point, { ...cut, depthMm: 3 }, "handheld")).toMatch(/plunge at the start/);
  });
});

// Oak, beech, walnut and many imported species irritate; hardwood dust is a recognised carcinogen. Common practice.
describe("dust", () => {
  it.each([
    [
      "white-oak",
      /White oak: its dust can irritate or sensitise, and hardwood dust is a recognised carcinogen/,
    ],
    ["american-beech", /can irritate or sensitise/],
    ["black-walnut", /can irritate or sensitise/],
    ["teak", /can irritate or sensitise/],
    ["sugar-maple", /^Hardwood dust is a recognised carcinogen/m],
    ["mdf", /is fine and holds its glue/],
    ["eastern-white-pine", undefined],
    ["acrylic", undefined],
  ])("of %s", (woodId, says) => {
    const wood = woodById(woodId);
    if (wood === undefined) throw new Error(woodId);
    const plan = makePlan({
      ...{ bit: STRAIGHT, mounting: "table", wood, policy: DEFAULT_POLICY },
      cut: { kind: "groove", depthMm: 3, edges: EDGES },
      router: { minRpm: 8000, maxRpm: 24_000 },
    });
    const text = said(plan).join("\n");
    if (says === undefined) expect(text).not.toMatch(/carcinogen|irritate|glue/);
    else expect(text).toMatch(says);
  });
});

describe("what a teacher says before the cut", () => {
  it.each<[string, Bit, Cut, Mounting, readonly string[], readonly string[]]>([
    [
      "a bearing",
      ROUND_OVER(6.35),
      { kind: "edge", edges: EDGES },
      "table",
      ["edges-whole", "bearing-turns", "lock-the-height", "fence-and-pilot", "never-trap-the-work"],
      ["support-the-base", "starting-pin", "tall-fence"],
    ],
    [
      "the same by hand",
      ROUND_OVER(6.35),
      { kind: "edge", edges: EDGES },
      "handheld",
      ["edges-whole", "bearing-turns", "lock-the-height", "support-the-base", "both-hands"],
      ["fence-and-pilot", "never-trap-the-work", "guard-and-push-blocks"],
    ],
    [
      "a groove along a fence",
      STRAIGHT,
      { kind: "groove", depthMm: 6, edges: EDGES },
      "table",
      ["edges-whole", "lock-the-height", "fence-behind-bit"],
      ["bearing-turns", "never-trap-the-work", "close-the-fence", "support-the-base"],
    ],
    [
      "the end of a rail",
      bitOf(exampleOf("cope")),
      { kind: "joint", thicknessMm: 19, edges: [{ lengthMm: 60, grain: "end" }] },
      "table",
      ["work-clamped-on-sled", "same-face-down", "back-the-end-grain"],
      ["small-work", "feather-boards"],
    ],
    [
      "a panel on edge",
      bitOf(exampleOf("panel-raising-vertical")),
      { kind: "panel", thicknessMm: 16, edges: EDGES },
      "table",
      ["tall-fence", "feather-boards", "same-face-down"],
      [],
    ],
  ])("%s", (_, bit, cut, mounting, must, mustNot) => {
    const codes = precautionsOf(bit, cut, mounting);
    expect(codes).toEqual(expect.arrayContaining([...must]));
    for (const code of mustNot) expect(codes).not.toContain(code);
  });
});

function exampleOf(kind: string): Bit["form"] {
  const form = EXAMPLE_FORMS.find((each) => each.kind === kind);
  if (form === undefined) throw new Error(kind);
  return form;
}
