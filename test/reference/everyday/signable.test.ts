import { describe, expect, it, test } from "vitest";
import { bitOf, DOVETAIL, EDGES, KEYHOLE, planOf, STRAIGHT, said } from "../set-up-plans.ts";
import { cardOf, sentencesOf } from "./card.ts";
import { EVERYDAY_PLANS, everydayPlan } from "./plans.ts";

const INLAY_BIT = bitOf({ kind: "spiral-down-cut", diameterMm: 3.175, cuttingLengthMm: 12.7 });
const SYSTEMS = ["metric", "imperial"] as const;

// What a careful teacher would not sign, whatever the cut: common practice, or plain English.
describe.each(SYSTEMS)("the cards in %s units", (units) => {
  const cards = EVERYDAY_PLANS.map((each) => {
    const plan = everydayPlan(each, units);
    return {
      name: each.name,
      plan,
      sentences: sentencesOf(plan, units),
      card: cardOf(each.name, plan, units),
    };
  });

  it("say nothing twice but what is cut", () => {
    for (const { name, sentences } of cards) {
      const others = sentences.filter(
        (sentence) => !/^Pass \d|^For pass \d|^Unplug the router and check/.test(sentence),
      );
      expect([name, others.filter((each, index) => others.indexOf(each) !== index)]).toEqual([name, []]);
    }
  });

  it("run no length into the word after it, and leave no number or name open", () => {
    for (const { card } of cards) expect(card).not.toMatch(/ in in |undefined|NaN|Infinity|\[object/);
  });

  it("tell distances that nobody measures closely in round figures", () => {
    for (const { card } of cards) expect(card).not.toMatch(/101\.6|304\.8|3\.18 mm, and tighten/);
  });

  it("ask for scrap or for a test piece, not for both", () => {
    for (const { name, plan } of cards) {
      const isPiece = plan.steps.some(({ code }) => code === "test-piece");
      const isScrap = plan.precautions.some(({ code }) => code === "scrap-first");
      expect([name, isPiece !== isScrap]).toEqual([name, true]);
    }
  });
});

// Common practice: a keyhole bit runs back to its own hole, where the motor stops; nothing stops it at the far end.
test("a keyhole bit comes back to its hole before the motor stops", () => {
  const plan = planOf(KEYHOLE, { kind: "groove", depthMm: 11, isStopped: true, edges: EDGES }, "handheld");
  const sentences = sentencesOf(plan).join(" ");
  expect(sentences).toContain("comes out at its own hole alone");
  expect(sentences).not.toContain("before it is drawn back");
});

// Common practice: along an edge it is fed all the way past; in a slot it stays down until the motor stands.
test("a bit that is wider below is led as its cut allows", () => {
  const dovetail = bitOf({ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 9 });
  const slot = sentencesOf(planOf(dovetail, { kind: "groove", depthMm: 9, edges: EDGES })).join(" ");
  expect(slot).toMatch(/wider below than above: in the cut it is neither lifted nor tilted/);
  const tail = sentencesOf(planOf(dovetail, { kind: "edge", thicknessMm: 12, edges: EDGES })).join(" ");
  expect(tail).toMatch(/wider below than above: set its height once, feed all the way past it/);
});

// A fence is set by what can be measured: the bit's edge, and the groove's distance from the edge of the work.
test("the first run of a wide groove is set by the edge of the bit", () => {
  const cut = { kind: "groove", depthMm: 5, widthMm: 25, edges: EDGES } as const;
  expect(said(planOf(STRAIGHT, cut)).join(" ")).toContain(
    "run 1, set the fence as far from the near edge of the bit as the nearer wall of the groove lies from the edge of the work",
  );
  const byHand = said(planOf(STRAIGHT, cut, "handheld")).join(" ");
  expect(byHand).toContain("Measure from the edge of the base to the far edge of the bit");
  expect(byHand).toMatch(/run 1, set the straightedge as far from the right-hand wall/);
});

test("a straightedge is parallel to the cut, along the grain too", () => {
  const cut = { kind: "groove", depthMm: 5, edges: EDGES } as const;
  expect(said(planOf(STRAIGHT, cut, "handheld")).join(" ")).toMatch(
    /straightedge that far from the line .* parallel to it/,
  );
});

// Common practice: a carriage stands clear of the slab, and its depth counts from the highest place.
test("on rails the depth counts from where the bit touches the slab", () => {
  const surfacing = bitOf({ kind: "surfacing", diameterMm: 50.8, cuttingLengthMm: 12.7 });
  const plan = planOf(surfacing, { kind: "surface", depthMm: 4, widthMm: 400, edges: EDGES }, "handheld");
  const sentences = said(plan).join(" ");
  expect(sentences).toMatch(
    /let the bit touch the highest place of the work\. For pass 1 set it [\d.]+ mm lower than that/,
  );
  expect(sentences).toMatch(/set the bit 4 mm lower than where it touched the work/);
  expect(sentences).not.toMatch(/below the base|test piece/);
});

// A square block backs a straight end. Along a curve the grain turns under the bit.
test("a curved edge is not backed with a square block", () => {
  const roundOver = bitOf({ kind: "round-over", diameterMm: 25.4, radiusMm: 6.35, pilotDiameterMm: 12.7 });
  const cut = { kind: "edge", edges: [{ lengthMm: 1900, grain: "end" }] } as const;
  expect(said(planOf(roundOver, { ...cut, isCurved: true })).join(" ")).toMatch(
    /Where the edge turns across the grain/,
  );
  expect(said(planOf(roundOver, { ...cut, isCurved: true })).join(" ")).not.toMatch(/square block/);
  expect(said(planOf(roundOver, cut)).join(" ")).toMatch(/square block/);
});

// 2 to 3 mm is what is left after sawing.
test.each([
  [1, false],
  [5, true],
])("an overhang of %d mm is sawn first: %s", (overhangMm, isSawn) => {
  const trimmer = bitOf({ kind: "flush-trim", diameterMm: 19, cuttingLengthMm: 32, bearing: "tip" });
  const sentences = said(planOf(trimmer, { kind: "trim", overhangMm, thicknessMm: 19, edges: EDGES })).join(
    " ",
  );
  expect(/Saw the waste/.test(sentences)).toBe(isSawn);
});

// The bit of a keyhole or an inlay leaves the work nowhere: there is nothing to back.
test.each([
  ["a keyhole", KEYHOLE, { kind: "groove", depthMm: 11, isStopped: true }],
  ["a recess", INLAY_BIT, { kind: "inlay", part: "recess", depthMm: 3, bushingDiameterMm: 14.29 }],
] as const)("%s across the grain is not backed", (_, bit, cut) => {
  const edges = [{ lengthMm: 100, grain: "across" }] as const;
  expect(said(planOf(bit, { ...cut, edges }, "handheld")).join(" ")).not.toMatch(/back it|Back the/);
});

// A burning wood must not be told to keep moving where the motor is stopped in the slot.
test("a stopped dovetail in cherry stops its motor in the slot, and nothing forbids it", () => {
  const cut = { kind: "groove", depthMm: 9, isStopped: true, edges: EDGES } as const;
  const sentences = said(planOf(DOVETAIL, cut)).join(" ");
  expect(sentences).toMatch(/stop the motor, wait until the bit stands/);
  expect(sentences).not.toMatch(/never stop/);
});
