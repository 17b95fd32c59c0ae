import type { Bit, Cut, Mounting } from "@rimwise/domain";
import { describe, expect, it } from "vitest";
import { bitOf, DOVETAIL, EDGES, KEYHOLE, planOf, ROUND_OVER, STRAIGHT, said } from "./set-up-plans.ts";

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
      said(planOf(bit, { kind: "groove", depthMm: 8, isStopped: true, edges: EDGES }, mounting)).join(" ");
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
      { kind: "groove", depthMm: 6, isStopped: true, edges: EDGES },
      { kind: "groove", depthMm: 1, feedDirection: "with-rotation", edges: EDGES },
      { kind: "edge", edges: EDGES },
      { kind: "edge", isCurved: true, edges: EDGES },
      { kind: "edge", side: "inside", edges: EDGES },
      { kind: "edge", side: "inside", isCurved: true, edges: EDGES },
      { kind: "edge", heightMm: 1, feedDirection: "with-rotation", edges: EDGES },
      { kind: "rabbet", depthMm: 3, widthMm: 3, edges: EDGES },
    ];
    let planCount = 0;
    for (const bit of [STRAIGHT, DOVETAIL, KEYHOLE, ROUND_OVER(3), ROUND_OVER(9.5)]) {
      for (const cut of cuts) {
        for (const mounting of ["table", "handheld"] as const) {
          const text = planned(bit, cut, mounting);
          if (text === undefined) continue;
          planCount += 1;
          expect(
            one.test(text) && other.test(text),
            `${bit.form.kind} ${JSON.stringify(cut)} ${mounting}: ${text}`,
          ).toBe(false);
        }
      }
    }
    expect(planCount).toBeGreaterThan(30);
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
