import { describe, expect, it } from "vitest";
import { DEFAULT_POLICY } from "../policy/policy.ts";
import { dialSpeeds, doubtedReadings } from "./dial.ts";
import { routerFaults } from "./faults.ts";
import { readingsAgree } from "./reading.ts";
import type { Dial, DialReading, Router } from "./router.ts";

const policy = DEFAULT_POLICY;
const dial: Dial = { marks: { first: 1, last: 5 }, steps: 1 };
const router: Router = { minRpm: 9000, maxRpm: 22000, dial };

const at = (from: Router, mark: number | string) => {
  const found = dialSpeeds(from, policy).find((speed) => speed.mark === mark);
  if (found === undefined) throw new Error(`no mark ${mark}`);
  return found;
};

describe("a dial known only by the router's range", () => {
  it("carries the larger tolerance everywhere, its ends included", () => {
    for (const speed of dialSpeeds(router, policy)) {
      expect(speed.basis).toBe("range");
      expect(speed.rpmHighest).toBeCloseTo(speed.rpm * 1.1, 9);
    }
  });

  it("clicks at its detents only", () => {
    const halves = dialSpeeds({ ...router, dial: { ...dial, steps: 2 } }, policy).map(({ mark }) => mark);
    expect(halves).toEqual([1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5]);
  });

  it("is set to its printed marks if nothing is said of detents", () => {
    const { marks } = dial;
    expect(dialSpeeds({ ...router, dial: { marks } }, policy).map(({ mark }) => mark)).toEqual([
      1, 2, 3, 4, 5,
    ]);
  });

  it("is set to tenths of a mark if it is stepless, to whole marks on a long scale", () => {
    expect(dialSpeeds({ ...router, dial: { ...dial, steps: 0 } }, policy)).toHaveLength(41);
    const long = { ...router, dial: { marks: { first: 0, last: 100 }, steps: 0 } };
    expect(dialSpeeds(long, policy)).toHaveLength(101);
  });

  it("may be lettered", () => {
    const lettered = { ...router, dial: { marks: { first: "A", last: "E" }, steps: 2 } };
    expect(at(lettered, "B").rpm).toBe(12250);
    expect(at(lettered, "B.5").rpm).toBe(13875);
  });
});

describe("a dial with tachometer readings", () => {
  const read: Router = {
    ...router,
    dial: {
      ...dial,
      steps: 2,
      readings: [
        { mark: 2, rpm: 11800 },
        { mark: 3, rpm: 16100 },
      ],
    },
  };

  it("takes a reading over the range, with the smaller tolerance", () => {
    expect(at(read, 2)).toMatchObject({ rpm: 11800, rpmHighest: 11800 * 1.02, basis: "reading" });
  });

  it("goes straight from one reading to the next, never above what the upper one may be", () => {
    const between = at(read, 2.5);
    expect(between).toMatchObject({ rpm: 13950, basis: "between-readings" });
    expect(between.rpmHighest).toBeCloseTo(13950 * 1.05, 9);
    const close: Router = {
      ...router,
      dial: {
        ...dial,
        steps: 2,
        readings: [
          { mark: 2, rpm: 12000 },
          { mark: 3, rpm: 12100 },
          { mark: 3, rpm: 12100 },
        ],
      },
    };
    expect(at(close, 2.5).rpmHighest).toBeCloseTo(12100 * 1.02, 9);
  });

  it("keeps the larger tolerance between a reading and an end that was not measured", () => {
    expect(at(read, 1.5)).toMatchObject({ rpm: 10400, basis: "range" });
    expect(at(read, 1.5).rpmHighest).toBeCloseTo(10400 * 1.1, 9);
  });

  it("rises from mark to mark even if readings contradict the plate", () => {
    const odd: Router = {
      ...router,
      dial: {
        ...dial,
        readings: [
          { mark: 2, rpm: 8000, isConfirmed: true },
          { mark: 2, rpm: 8000, isConfirmed: true },
          { mark: 4, rpm: 23000 },
        ],
      },
    };
    const speeds = dialSpeeds(odd, policy);
    expect(speeds.map(({ rpm }) => rpm)).toEqual([8000, 8000, 15500, 23000, 23000]);
  });
});

// A slip of the pen must not slow a mark: the faster speed is the safe one (first principles).
describe("a reading that is hard to believe", () => {
  const FAST: Router = { minRpm: 23_000, maxRpm: 30_000, dial };
  const withReadings = (from: Router, ...readings: readonly DialReading[]): Router => ({
    ...from,
    dial: { ...dial, readings },
  });

  it("does not slow a mark, however it was confirmed, until a second reading agrees", () => {
    const typed = { mark: 1, rpm: 1100, isConfirmed: true };
    const once = withReadings(FAST, typed);
    expect(dialSpeeds(once, policy)).toEqual(dialSpeeds(FAST, policy));
    expect(doubtedReadings(once)).toEqual([{ ...typed, countsRpm: 23_000 }]);
    const twice = withReadings(FAST, typed, { ...typed, rpm: 1120 });
    expect(at(twice, 1)).toMatchObject({ rpm: 1120, basis: "reading" });
    expect(doubtedReadings(twice)).toEqual([]);
  });

  it("counts when it is the faster, with the larger tolerance, and the marks above it are no slower", () => {
    const fast = withReadings(router, { mark: 2, rpm: 17_000, isConfirmed: true }, { mark: 3, rpm: 16_000 });
    expect(at(fast, 2)).toMatchObject({ rpm: 17_000, rpmHighest: 17_000 * 1.1, basis: "range" });
    expect(at(fast, 3)).toMatchObject({ rpm: 17_000, rpmHighest: 17_000 * 1.1 });
  });

  it("is one that is slower than the plate's line by more than the plate's tolerance", () => {
    // Mark 2 of 9,000 to 22,000 rpm over four steps: 12,250 rpm by the line; a tenth less is 11,025.
    expect(at(withReadings(router, { mark: 2, rpm: 11_025 }), 2).basis).toBe("reading");
    expect(at(withReadings(router, { mark: 2, rpm: 11_024 }), 2)).toMatchObject({
      rpm: 12_250,
      basis: "range",
    });
  });

  it("agrees with another of its mark within two hundredths of the faster", () => {
    expect(readingsAgree({ mark: 2, rpm: 9800 }, { mark: 2, rpm: 10_000 })).toBe(true);
    expect(readingsAgree({ mark: 2, rpm: 9799 }, { mark: 2, rpm: 10_000 })).toBe(false);
    expect(readingsAgree({ mark: 2, rpm: 9800 }, { mark: 3, rpm: 9800 })).toBe(false);
  });
});

describe("readings given with a router", () => {
  const FAST: Router = { minRpm: 23_000, maxRpm: 30_000, dial };
  const faultsOf = (...readings: readonly DialReading[]) =>
    routerFaults({ ...FAST, dial: { ...dial, readings } }).map(({ pointer, code }) => [pointer, code]);

  it.each<[string, readonly DialReading[], readonly (readonly [string, string])[]]>([
    [
      "at the edge of the plate's tolerance",
      [
        { mark: 1, rpm: 20_700 },
        { mark: 5, rpm: 33_000 },
      ],
      [],
    ],
    ["a digit short", [{ mark: 1, rpm: 1100 }], [["/dial/readings/0/rpm", "reading-outside-range"]]],
    ["a digit short and confirmed", [{ mark: 1, rpm: 1100, isConfirmed: true }], []],
    ["under it", [{ mark: 1, rpm: 20_699 }], [["/dial/readings/0/rpm", "reading-outside-range"]]],
    ["over it", [{ mark: 5, rpm: 33_001 }], [["/dial/readings/0/rpm", "reading-outside-range"]]],
    [
      "that fall",
      [
        { mark: 1, rpm: 25_000 },
        { mark: 2, rpm: 24_000 },
      ],
      [["/dial/readings/1/rpm", "readings-do-not-rise"]],
    ],
    [
      "that fall, one confirmed",
      [
        { mark: 1, rpm: 25_000, isConfirmed: true },
        { mark: 2, rpm: 24_000 },
      ],
      [],
    ],
    [
      "of one mark that agree",
      [
        { mark: 1, rpm: 24_000 },
        { mark: 1, rpm: 23_900 },
      ],
      [],
    ],
    [
      "of one mark that differ",
      [
        { mark: 1, rpm: 24_000 },
        { mark: 1, rpm: 23_000 },
      ],
      [["/dial/readings/1/rpm", "readings-disagree"]],
    ],
    [
      "in falling order of mark",
      [
        { mark: 2, rpm: 24_000 },
        { mark: 1, rpm: 23_000 },
      ],
      [["/dial/readings/1/mark", "marks-do-not-rise"]],
    ],
    [
      "over every router",
      [{ mark: 1, rpm: 1e6, isConfirmed: true }],
      [["/dial/readings/0/rpm", "out-of-range"]],
    ],
  ])("%s", (_name, readings, want) => {
    expect(faultsOf(...readings)).toEqual(want);
  });
});

describe("a router without a dial", () => {
  it("runs at its one speed", () => {
    expect(dialSpeeds({ minRpm: 23000, maxRpm: 23000 }, policy)).toEqual([
      { mark: undefined, rpm: 23000, rpmHighest: 23000 * 1.1, basis: "single-speed" },
    ]);
  });

  it("is taken at its slowest and its fastest when a range is given but no dial", () => {
    expect(dialSpeeds({ minRpm: 10000, maxRpm: 22000 }, policy)).toEqual([
      { mark: undefined, rpm: 10000, rpmHighest: 10000 * 1.1, basis: "no-dial" },
      { mark: undefined, rpm: 22000, rpmHighest: 22000 * 1.1, basis: "no-dial" },
    ]);
  });
});

describe("a stepless dial", () => {
  const marksOf = (last: number) =>
    dialSpeeds({ ...router, dial: { marks: { first: 1, last }, steps: 0 } }, policy).length;

  it("is set to tenths of a mark while it has twenty or less between its ends", () => {
    expect(marksOf(6)).toBe(51);
    expect(marksOf(21)).toBe(201);
  });

  it("is set to whole marks beyond that", () => {
    expect(marksOf(21.1)).toBe(21);
  });
});
