import { describe, expect, it } from "vitest";
import { type DayOrder, type DaySetup, DomainError, orderDay, orderDaySteps } from "../index.ts";

/** Minutes that are told apart in any sum. */
const TIMES = {
  bitChangeMinutes: 100,
  heightSettingMinutes: 20,
  fenceSettingMinutes: 7,
  dialSettingMinutes: 0.5,
  stationMoveMinutes: 3,
  testPieceMinutes: 1000,
};

const RAILS: DaySetup = {
  id: "rails",
  station: "table",
  bitId: "cove",
  guide: "fence",
  heightMm: 9,
  fenceMm: 4,
  dial: 2,
  after: [],
};

const idsOf = ({ order }: DayOrder) => order.map(({ setupId }) => setupId);
const codesOf = ({ order }: DayOrder) => order.map(({ changes }) => changes.map(({ code }) => code));
const minutesOf = ({ order }: DayOrder) => order.map(({ changeMin }) => changeMin);

describe("what a set-up costs, added by hand", () => {
  it("is everything for the first one of a station: bit, dial, height, fence and a test piece", () => {
    const day = orderDay([RAILS], TIMES);
    expect(codesOf(day)).toEqual([["bit", "dial", "height", "fence", "test-piece"]]);
    expect(day).toMatchObject({ changeoverMin: 1127.5, lowerBoundMin: 1127.5, isProvenLeast: true });
  });

  it.each<[string, Partial<DaySetup>, string[], number]>([
    ["nothing for the same setting", {}, [], 0],
    ["nothing for a height that nobody can set apart", { heightMm: 9.001 }, [], 0],
    ["a height and a test piece", { heightMm: 9.1 }, ["height", "test-piece"], 1020],
    ["a fence and a test piece", { fenceMm: 5 }, ["fence", "test-piece"], 1007],
    ["a fence that another guide sets", { guide: "sled" }, ["fence", "test-piece"], 1007],
    [
      "another guide without a distance",
      { guide: "bearing", fenceMm: undefined },
      ["guide", "test-piece"],
      1007,
    ],
    ["the dial alone, without a test piece", { dial: 3 }, ["dial"], 0.5],
    ["no dial where there is none", { dial: undefined }, [], 0],
    [
      "a bit, and with it its height and fence again",
      { bitId: "ogee" },
      ["bit", "height", "fence", "test-piece"],
      1127,
    ],
    ["a bit on its bearing", { bitId: "ogee", fenceMm: undefined }, ["bit", "height", "test-piece"], 1120],
    [
      "a move and everything at another station",
      { station: "by hand" },
      ["move", "bit", "dial", "height", "fence", "test-piece"],
      1130.5,
    ],
  ])("is %s", (_, other, codes, minutes) => {
    const day = orderDay([RAILS, { ...RAILS, ...other, id: "next", after: ["rails"] }], TIMES);
    expect(codesOf(day)[1]).toEqual(codes);
    expect(minutesOf(day)[1]).toBeCloseTo(minutes, 9);
  });

  it("is a move alone at a station that still stands as it was left", () => {
    const setups = [
      RAILS,
      { ...RAILS, id: "slots", station: "by hand", after: ["rails"] },
      { ...RAILS, id: "stiles", after: ["slots"] },
    ];
    expect(codesOf(orderDay(setups, TIMES))[2]).toEqual(["move"]);
  });
});

describe("the order of a day", () => {
  it("puts a bit in once, whatever the list says", () => {
    const setups = ["cove", "ogee", "cove", "ogee", "cove"].map((bitId, index) => ({
      ...RAILS,
      bitId,
      id: `${index}`,
    }));
    expect(idsOf(orderDay(setups, TIMES))).toEqual(["0", "2", "4", "1", "3"]);
  });

  it("keeps the given order among orders that cost the same", () => {
    const setups = [3, 1, 2].map((fenceMm) => ({ ...RAILS, fenceMm, id: `${fenceMm}` }));
    expect(idsOf(orderDay(setups, TIMES))).toEqual(["3", "1", "2"]);
  });

  it("cuts the cope of all rails before any stick, though the bit of the sticks is in the list first", () => {
    const setups = [
      { ...RAILS, id: "sticks", bitId: "stick", after: ["copes", "short copes"] },
      { ...RAILS, id: "copes", bitId: "cope" },
      { ...RAILS, id: "short copes", bitId: "cope", heightMm: 12 },
    ];
    expect(idsOf(orderDay(setups, TIMES))).toEqual(["copes", "short copes", "sticks"]);
  });

  it("of no set-ups is empty", () => {
    const empty = { order: [], changeoverMin: 0, lowerBoundMin: 0, isProvenLeast: true };
    expect(orderDay([], TIMES)).toEqual(empty);
  });

  it("can be had piece by piece", () => {
    const setups = Array.from({ length: 30 }, (_, place) => ({
      ...RAILS,
      id: `${place}`,
      bitId: `bit ${place % 5}`,
      heightMm: 5 + (place % 7),
    }));
    const steps = orderDaySteps(setups, TIMES);
    let pieces = 0;
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) pieces += 1;
    expect(pieces).toBeGreaterThan(10);
    expect(step.value).toEqual(orderDay(setups, TIMES));
  });
});

describe("a day is refused", () => {
  const faultsOf = (setups: readonly DaySetup[]) => {
    try {
      return orderDay(setups, TIMES);
    } catch (error) {
      return error instanceof DomainError ? error.faults : error;
    }
  };

  it("if an id is unknown or given twice, with every one of them", () => {
    const setups = [{ ...RAILS, after: ["stiles"] }, { ...RAILS, id: "x", after: ["rails", "y"] }, RAILS];
    expect(faultsOf(setups)).toEqual([
      { pointer: "/0/after/0", code: "unknown-set-up", values: { given: "stiles" } },
      { pointer: "/1/after/1", code: "unknown-set-up", values: { given: "y" } },
      { pointer: "/2/id", code: "id-given-twice", values: { given: "rails" } },
    ]);
  });

  it("if set-ups wait for each other in a circle, with those in it and no other", () => {
    const setups = [
      { ...RAILS, id: "outside", after: ["a"] },
      { ...RAILS, id: "a", after: ["b"] },
      { ...RAILS, id: "b", after: ["c"] },
      { ...RAILS, id: "c", after: ["free", "a"] },
      { ...RAILS, id: "free" },
    ];
    const values = { setupIds: ["a", "b", "c"] };
    expect(faultsOf(setups)).toEqual([{ pointer: "/1/after", code: "set-ups-in-circle", values }]);
  });

  it("if a set-up waits for itself", () => {
    const values = { setupIds: ["rails"] };
    expect(faultsOf([{ ...RAILS, after: ["rails"] }])).toEqual([
      { pointer: "/0/after", code: "set-ups-in-circle", values },
    ]);
  });
});
