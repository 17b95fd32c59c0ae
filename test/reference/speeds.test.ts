import { chartRpm, DEFAULT_POLICY, dialSpeeds, rimSpeedMPerS, rpmAtRimSpeed } from "@rimwise/domain";
import { describe, expect, it } from "vitest";

const MM_PER_INCH = 25.4;
const M_PER_S_PER_MPH = 0.44704;

describe("rim speed, v = π·D·n (computed with 30 digits: reference table §7)", () => {
  const ROWS: readonly [diameterIn: number, rpm: number, mph: number, mPerS: number][] = [
    [3.5, 22000, 229.0744643, 102.4054485],
    [3.5, 12000, 124.9497078, 55.85751738],
    [3.5, 9000, 93.71228086, 41.89313804],
    [1.5, 22000, 98.17477042, 43.88804937],
    [1, 24000, 71.39983304, 31.91858136],
    [1.25, 18000, 66.93734347, 29.92367003],
    [2, 18000, 107.0997496, 47.87787204],
    [2.25, 16000, 107.0997496, 47.87787204],
    [2.5, 16000, 118.9997217, 53.1976356],
    [2.75, 16000, 130.8996939, 58.51739916],
    [2.75, 12000, 98.17477042, 43.88804937],
    [3, 12000, 107.0997496, 47.87787204],
    [4, 12000, 142.7996661, 63.83716272],
    [0.5, 24000, 35.69991652, 15.95929068],
    [0.25, 22000, 16.36246174, 7.314674895],
  ];

  it.each(ROWS)("%f in at %i rpm", (diameterIn, rpm, mph, mPerS) => {
    const found = rimSpeedMPerS(diameterIn * MM_PER_INCH, rpm);
    expect(found / mPerS).toBeCloseTo(1, 8);
    expect(found / M_PER_S_PER_MPH / mph).toBeCloseTo(1, 8);
  });

  // Common practice: the rim of a 3-1/2 in bit goes about 11 in a turn, near 230 mph at 22 000 rpm, about 125 at 12 000.
  it("agrees with what the trade says of a 3-1/2 in bit", () => {
    expect(Math.PI * 3.5).toBeCloseTo(11, 0);
    expect(rimSpeedMPerS(88.9, 22000) / M_PER_S_PER_MPH).toBeCloseTo(230, -1);
    expect(rimSpeedMPerS(88.9, 12000) / M_PER_S_PER_MPH).toBeCloseTo(125, 0);
  });
});

describe("speed in rpm at which the rim reaches 125 mph and 40 m/s (reference table §7)", () => {
  const ROWS: readonly [diameterIn: number, at125Mph: number, at40MPerS: number][] = [
    [0.25, 168067.62, 120306.1],
    [0.5, 84033.81, 60153.049],
    [0.75, 56022.54, 40102.033],
    [1, 42016.905, 30076.525],
    [1.25, 33613.524, 24061.22],
    [1.5, 28011.27, 20051.016],
    [1.75, 24009.66, 17186.586],
    [2, 21008.4525, 15038.262],
    [2.25, 18674.18, 13367.344],
    [2.5, 16806.762, 12030.61],
    [2.75, 15278.8745, 10936.918],
    [3, 14005.635, 10025.508],
    [3.25, 12928.2785, 9254.3153],
    [3.5, 12004.83, 8593.2928],
    [3.75, 11204.508, 8020.4066],
    [4, 10504.2262, 7519.1312],
  ];

  it.each(ROWS)("%f in", (diameterIn, at125Mph, at40MPerS) => {
    expect(rpmAtRimSpeed(diameterIn * MM_PER_INCH, 125 * M_PER_S_PER_MPH) / at125Mph).toBeCloseTo(1, 7);
    expect(rpmAtRimSpeed(diameterIn * MM_PER_INCH, 40) / at40MPerS).toBeCloseTo(1, 7);
  });

  const LARGEST: readonly [rpm: number, largestIn: number][] = [
    [24000, 1.7507044],
    [22000, 1.9098593],
    [18000, 2.3342725],
    [16000, 2.6260566],
    [12000, 3.5014087],
  ];

  it.each(LARGEST)("at %i rpm the largest bit under 125 mph is %f in", (rpm, largestIn) => {
    expect(rpmAtRimSpeed(largestIn * MM_PER_INCH, 125 * M_PER_S_PER_MPH) / rpm).toBeCloseTo(1, 6);
  });
});

describe("more of the table", () => {
  it.each([
    [24000, 1.2531885],
    [22000, 1.3671148],
  ])("at %i rpm the smallest bit to reach 40 m/s is %f in", (rpm, smallestIn) => {
    expect(rimSpeedMPerS(smallestIn * MM_PER_INCH, rpm)).toBeCloseTo(40, 5);
  });

  // A dial is rounded down: a 3-1/2 in bit meant for 12 000 runs 133.28 mph at 12 800 (mark 2), 118.70 mph at 11 400 (mark 1.5).
  it.each([
    [12800, 133.28],
    [11400, 118.7],
  ])("at %i rpm a 3-1/2 in bit runs %f mph", (rpm, mph) => {
    expect(rimSpeedMPerS(88.9, rpm) / M_PER_S_PER_MPH).toBeCloseTo(mph, 2);
  });
});

describe("the trade's chart (common practice)", () => {
  it.each([
    [25, 24000],
    [50, 18000],
    [63, 16000],
    [90, 12000],
  ])("up to %f mm: %i rpm", (diameterMm, rpm) => {
    expect(chartRpm(diameterMm)).toBe(rpm);
  });

  // Reference §8.2: a 2-3/4 in bit read into the 16 000 band would run at 130.9 mph.
  it.each([
    [1.125, 18000],
    [2.125, 16000],
    [2.75, 12000],
  ])("in a hole of the chart, %f in, the lower speed holds", (diameterIn, rpm) => {
    expect(chartRpm(diameterIn * MM_PER_INCH)).toBe(rpm);
  });
});

describe("a dial drawn straight over the router's range", () => {
  const onDial = (minRpm: number, maxRpm: number, first: number, last: number, steps: number) =>
    dialSpeeds({ minRpm, maxRpm, dial: { marks: { first, last }, steps } }, DEFAULT_POLICY);

  // Common practice: a dial of 1 to 5 over 9 000 to 22 000 rpm reads 12 250 at 2.
  it("reads 12 250 at 2 on a dial of 1 to 5 over 9 000 to 22 000", () => {
    expect(onDial(9000, 22000, 1, 5, 1).find(({ mark }) => mark === 2)?.rpm).toBe(12250);
  });

  // Reference table §7: dial 1 to 6 over 10 000 to 24 000, 2 800 a step.
  it("reads the whole table of a dial of 1 to 6 over 10 000 to 24 000", () => {
    const want = [10000, 11400, 12800, 14200, 15600, 17000, 18400, 19800, 21200, 22600, 24000];
    const found = onDial(10000, 24000, 1, 6, 2);
    expect(found.map(({ mark }) => mark)).toEqual([1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6]);
    found.forEach(({ rpm }, index) => {
      expect(rpm).toBeCloseTo(want[index] ?? Number.NaN, 8);
    });
  });
});
