import { describe, expect, it } from "vitest";
import type { Bit } from "../bit/bit.ts";
import type { Cut } from "../cut/kind/registry.ts";
import { makePlan } from "../plan/make-plan.ts";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import type { Mounting } from "../router/mounting.ts";
import { woodById } from "../wood/registry.ts";
import { describePrecaution } from "../wording/english/precautions.ts";
import { describeStep } from "../wording/english/steps.ts";
import { showIn } from "../wording/show.ts";

const cherry = woodById("black-cherry");
if (cherry === undefined) throw new Error("no cherry");

const EDGES = [{ lengthMm: 600, grain: "long" }] as const;
const bitOf = (form: Bit["form"]): Bit => ({ form, shankDiameterMm: 12.7, wings: 2 });
const ROUND_OVER = (radiusMm: number) =>
  bitOf({ kind: "round-over", diameterMm: 12.7 + 2 * radiusMm, radiusMm, pilotDiameterMm: 12.7 });
const STRAIGHT = bitOf({ kind: "straight", diameterMm: 19.05, cuttingLengthMm: 31.75 });
const DOVETAIL = bitOf({ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 9 });
const KEYHOLE = bitOf({
  ...{ kind: "keyhole", diameterMm: 9.5, headHeightMm: 4, neckDiameterMm: 4.8, cuttingLengthMm: 11 },
});

function planOf(bit: Bit, cut: Cut, mounting: Mounting = "table") {
  return makePlan({
    ...{ bit, cut, mounting, wood: cherry ?? never(), policy: DEFAULT_POLICY },
    router: {
      minRpm: 8000,
      maxRpm: 24_000,
      dial: { marks: { first: 1, last: 6 }, steps: 2 },
      inputPowerW: 2200,
    },
  });
}

function never(): never {
  throw new Error("unreachable");
}

const said = (plan: ReturnType<typeof planOf>) => [
  ...plan.steps.map((step) => describeStep(step, showIn("metric"))),
  ...plan.precautions.map((precaution) => describePrecaution(precaution, showIn("metric"))),
];
const codesOf = (plan: ReturnType<typeof planOf>) => plan.findings.map(({ code }) => code);

// Which guide serves what, and which way to feed: common practice.
describe("what guides a cut", () => {
  it.each<[string, Bit, Cut, Mounting, string | undefined]>([
    [
      "a straight edge on a table",
      STRAIGHT,
      { kind: "rabbet", depthMm: 6, widthMm: 8, edges: EDGES },
      "table",
      "fence",
    ],
    [
      "one with a bearing",
      ROUND_OVER(6.35),
      { kind: "edge", edges: EDGES },
      "table",
      "fence-flush-with-bearing",
    ],
    [
      "a curved one with a bearing",
      ROUND_OVER(6.35),
      { kind: "edge", curved: true, edges: EDGES },
      "table",
      "bearing-and-pin",
    ],
    [
      "the same by hand",
      ROUND_OVER(6.35),
      { kind: "edge", curved: true, edges: EDGES },
      "handheld",
      "bearing",
    ],
    [
      "an opening with a bearing",
      ROUND_OVER(6.35),
      { kind: "edge", side: "inside", edges: EDGES },
      "handheld",
      "bearing",
    ],
    [
      "a straight edge by hand without one",
      STRAIGHT,
      { kind: "rabbet", depthMm: 6, widthMm: 8, edges: EDGES },
      "handheld",
      "edge-guide",
    ],
    ["a groove by hand", STRAIGHT, { kind: "groove", depthMm: 6, edges: EDGES }, "handheld", "straightedge"],
    ["a groove on a table", STRAIGHT, { kind: "groove", depthMm: 6, edges: EDGES }, "table", "fence"],
    [
      "a curved edge without a bearing",
      STRAIGHT,
      { kind: "rabbet", depthMm: 6, widthMm: 8, curved: true, edges: EDGES },
      "table",
      undefined,
    ],
    [
      "an opening without one",
      STRAIGHT,
      { kind: "rabbet", depthMm: 6, widthMm: 8, side: "inside", edges: EDGES },
      "handheld",
      undefined,
    ],
  ])("%s", (_, bit, cut, mounting, guide) => {
    const plan = planOf(bit, cut, mounting);
    expect(plan.guide).toBe(guide);
    if (guide !== undefined) return;
    expect(plan).toMatchObject({ verdict: "do-not-run", passes: [], steps: [] });
    expect(codesOf(plan)).toContain("nothing-guides");
  });
});

describe("a bearing needs wood to run on", () => {
  it.each<[number, number, boolean]>([
    [19, 19, false],
    [6.35, 6, false],
    [6.35, 8, false],
    [6.35, 8.4, true],
    [6.35, 19, true],
  ])("a round-over of %f mm in stock of %f mm: %s", (radiusMm, thicknessMm, isEnough) => {
    for (const mounting of ["table", "handheld"] as const) {
      const plan = planOf(ROUND_OVER(radiusMm), { kind: "edge", thicknessMm, edges: EDGES }, mounting);
      if (isEnough) expect(codesOf(plan)).not.toContain("bearing-without-wood");
      else {
        expect(codesOf(plan)).toContain("bearing-without-wood");
        expect(plan.verdict).toBe("do-not-run");
      }
    }
  });
});

// Height for the middle of the stock at the middle of the bit; the edge comes to a sharp corner: geometry, common practice.
describe("a joint that meets at the middle of the stock", () => {
  it.each<[string, Bit["form"], number, number, number | undefined]>([
    [
      "lock mitre, 19 mm",
      { kind: "lock-mitre", diameterMm: 70, cuttingLengthMm: 25, lockDepthMm: 2 },
      19,
      22,
      13,
    ],
    [
      "lock mitre, as thick as it joins",
      { kind: "lock-mitre", diameterMm: 70, cuttingLengthMm: 25, lockDepthMm: 2 },
      25,
      25,
      10,
    ],
    [
      "tongue, 18 mm",
      { kind: "tongue", diameterMm: 41, tongueThicknessMm: 6, tongueLengthMm: 9.5, cuttingLengthMm: 22 },
      18,
      20,
      11,
    ],
    [
      "drawer joint, 12 mm",
      { kind: "drawer-joint", diameterMm: 44, cuttingLengthMm: 16, stepMm: 6, stepHeightMm: 6 },
      12,
      14,
      16,
    ],
    [
      "finger joint, 20 mm",
      { kind: "finger-joint", diameterMm: 41, fingers: 3, fingerHeightMm: 5, fingerDepthMm: 10 },
      20,
      22.5,
      10.5,
    ],
  ])("%s: height and fence", (_, form, thicknessMm, heightMm, fenceMm) => {
    const [last] = planOf(bitOf(form), { kind: "joint", thicknessMm, edges: EDGES }).passes.slice(-1);
    expect(last?.pass.heightMm).toBeCloseTo(heightMm, 6);
    expect(last?.pass.fenceMm).toBeCloseTo(fenceMm ?? Number.NaN, 6);
  });

  it("is refused in stock thicker than the bit joins", () => {
    const form = { kind: "lock-mitre", diameterMm: 70, cuttingLengthMm: 25, lockDepthMm: 2 } as const;
    expect(() => planOf(bitOf(form), { kind: "joint", thicknessMm: 26, edges: EDGES })).toThrow(
      /thicknessMm/,
    );
  });
});

describe("what a plan says of its set-up", () => {
  it("names the height of a cut that is made at once, and no fence where there is none", () => {
    for (const bit of [DOVETAIL, KEYHOLE]) {
      for (const mounting of ["table", "handheld"] as const) {
        const plan = planOf(bit, { kind: "groove", depthMm: 8, edges: EDGES }, mounting);
        const heights = plan.steps.filter(({ code }) => code === "set-height");
        expect(heights).toMatchObject([{ heightMm: 8, mounting }]);
        expect(plan.steps.filter(({ code }) => code === "set-fence")).toEqual([]);
      }
    }
  });

  it("calls no cut light that takes all of the wood at once", () => {
    const plan = planOf(DOVETAIL, { kind: "groove", depthMm: 8, edges: EDGES });
    expect(plan.passes.map(({ pass }) => pass.kind)).toEqual(["rough"]);
    expect(said(plan).join(" ")).not.toMatch(/light last one/);
  });

  it("keeps care for bits that are dangerous in a table too", () => {
    // Up to 1-1/2 in ordinary, up to 2-1/2 in with care by hand, beyond for the table only (common practice).
    const edge = (diameterMm: number): Cut => ({
      kind: "rabbet",
      depthMm: 3,
      widthMm: diameterMm / 8,
      edges: EDGES,
    });
    const straight = (diameterMm: number) => bitOf({ kind: "straight", diameterMm, cuttingLengthMm: 25.4 });
    const verdictOf = (diameterMm: number, mounting: Mounting) =>
      planOf(straight(diameterMm), edge(diameterMm), mounting).verdict;
    expect([verdictOf(19.05, "table"), verdictOf(28, "table")]).toEqual(["run", "run"]);
    expect(verdictOf(28, "handheld")).not.toBe("run");
    expect(verdictOf(70, "table")).toBe("run-with-care");
  });

  it("says heights in terms of the machine", () => {
    const cut: Cut = { kind: "groove", depthMm: 5, edges: EDGES };
    expect(said(planOf(STRAIGHT, cut)).join(" ")).toMatch(/5 mm above the table\./);
    expect(said(planOf(STRAIGHT, cut, "handheld")).join(" ")).toMatch(/5 mm below the base\./);
  });

  it("does not lift a bit out of a slot that is wider below", () => {
    const stopped = (bit: Bit, mounting: Mounting) =>
      said(planOf(bit, { kind: "groove", depthMm: 8, stopped: true, edges: EDGES }, mounting)).join(" ");
    for (const mounting of ["table", "handheld"] as const) {
      expect(stopped(DOVETAIL, mounting)).toMatch(/draw it back out along the slot; never lift it/);
      expect(stopped(KEYHOLE, mounting)).toMatch(/come back to the hole, and stop the motor there/);
      for (const bit of [DOVETAIL, KEYHOLE])
        expect(stopped(bit, mounting)).not.toMatch(/raise the bit|before you lift it/);
      expect(stopped(STRAIGHT, mounting)).toMatch(/raise the bit|before you lift it/);
    }
  });

  // Pairs that no set-up can follow both of. Each is searched for in every plan of the tables above and below.
  it.each<[string, RegExp, RegExp]>([
    ["leave the fence off, and set one", /Leave the fence off/, /[Ss]et the fence/],
    [
      "feed with the rotation, and it runs off",
      /with the rotation, lightly/,
      /The other way (it runs off|the bit pulls)/,
    ],
    ["never lift it, and raise it", /never lift it/, /raise the bit/],
    [
      "not between bit and fence, and a groove over the bit",
      /between the bit and the fence/,
      /the bit pushes the work against it/,
    ],
  ])("never both: %s", (_, one, other) => {
    const cuts: Cut[] = [
      { kind: "groove", depthMm: 6, edges: EDGES },
      { kind: "groove", depthMm: 6, stopped: true, edges: EDGES },
      { kind: "groove", depthMm: 1, feedDirection: "with-rotation", edges: EDGES },
      { kind: "edge", edges: EDGES },
      { kind: "edge", curved: true, edges: EDGES },
      { kind: "edge", side: "inside", edges: EDGES },
      { kind: "edge", side: "inside", curved: true, edges: EDGES },
      { kind: "edge", heightMm: 1, feedDirection: "with-rotation", edges: EDGES },
      { kind: "rabbet", depthMm: 3, widthMm: 3, edges: EDGES },
    ];
    let told = 0;
    for (const bit of [STRAIGHT, DOVETAIL, KEYHOLE, ROUND_OVER(3), ROUND_OVER(9.5)]) {
      for (const cut of cuts) {
        for (const mounting of ["table", "handheld"] as const) {
          const text = planned(bit, cut, mounting);
          if (text === undefined) continue;
          told += 1;
          expect(
            one.test(text) && other.test(text),
            `${bit.form.kind} ${JSON.stringify(cut)} ${mounting}: ${text}`,
          ).toBe(false);
        }
      }
    }
    expect(told).toBeGreaterThan(30);
  });
});

/** What is said of a cut, or undefined when the bit cannot make it at all. */
function planned(bit: Bit, cut: Cut, mounting: Mounting): string | undefined {
  try {
    return said(planOf(bit, cut, mounting)).join(" ");
  } catch {
    return undefined;
  }
}
