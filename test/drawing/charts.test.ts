import { chartRpm, DEFAULT_POLICY, dialSpeeds, markPosition, rpmAtRimSpeed } from "@rimwise/domain";
import { PICTURES, svg } from "@rimwise/drawing";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planInputs, routers } from "../properties/arbitraries.ts";
import { planned, randomPlans } from "../properties/random-plans.ts";
import { expectKept } from "./layout.ts";
import { type Drawn, readBack } from "./read-back.ts";

const CASES = Number(process.env["PICTURE_CASES"] ?? 30);
/** A thousandth of a millimetre of paper on an axis of 60 mm is so much of it. */
const WRITTEN_RATIO = 5e-5;

const ringsOf = ({ paths }: Drawn, name: string) =>
  paths.filter(({ of }) => of === name).flatMap(({ rings }) => rings);

describe(`the limits of ${CASES} random plans`, () => {
  it("end where they are, the lowest first, and nothing is set beyond what it breaks", () => {
    for (const { plan } of randomPlans(23, CASES)) {
      const scene = PICTURES.limits.draw({ plan, name: "Alder Lane", units: "metric" });
      expectKept(scene);
      const drawn = readBack(svg(scene));
      const rows = ringsOf(drawn, "limit").map((ring) => ring.at(-1)?.xMm ?? Number.NaN);
      const beyond = ringsOf(drawn, "limit-beyond").length;
      expect(rows).toHaveLength(plan.limits.length);
      plan.limits.slice(0, plan.limits.length - beyond).forEach(({ rpm }, index) => {
        expect(Math.abs((rows[index] ?? 0) / rpm - 1)).toBeLessThan(WRITTEN_RATIO * 20);
      });
      const [setting] = ringsOf(drawn, "setting");
      expect(setting === undefined).toBe(plan.speed.setting === undefined);
      const nominal = Math.min(...(setting?.map(({ xMm }) => xMm) ?? [0]));
      expect(nominal).toBeLessThanOrEqual(plan.speed.ceilingRpm * (1 + WRITTEN_RATIO * 20));
      const forbidden = ringsOf(drawn, "ceiling").flat();
      expect(forbidden[0]?.xMm).toBeCloseTo(plan.speed.ceilingRpm, -2);
    }
  });

  it("of any bit and router keep their texts apart", () => {
    fc.assert(
      fc.property(planInputs, fc.constantFrom("metric" as const, "imperial" as const), (input, units) => {
        const plan = planned(input);
        if (plan !== undefined) expectKept(PICTURES.limits.draw({ plan, name: "Alder Lane", units }));
      }),
      { numRuns: CASES },
    );
  });
});

it("a dial is drawn at the speeds of its marks, and the most they may be", () => {
  fc.assert(
    fc.property(routers, (router) => {
      const speeds = dialSpeeds(router, DEFAULT_POLICY);
      const bits = speeds.slice(0, 3).map(({ mark, rpm }, index) => ({ name: `Bit ${index}`, mark, rpm }));
      const scene = PICTURES.dial.draw({
        router,
        policy: DEFAULT_POLICY,
        name: "Table 1",
        units: "metric",
        bits,
      });
      expectKept(scene);
      const drawn = readBack(svg(scene));
      if (router.dial === undefined) {
        expect(ringsOf(drawn, "nominal")).toEqual([]);
        return;
      }
      const [nominal = []] = ringsOf(drawn, "nominal");
      const [highest = []] = ringsOf(drawn, "highest");
      expect(nominal).toHaveLength(speeds.length);
      speeds.forEach(({ mark, rpm, rpmHighest }, index) => {
        expect(nominal[index]?.xMm).toBeCloseTo(markPosition(mark ?? Number.NaN), 2);
        expect(Math.abs((nominal[index]?.yMm ?? 0) - rpm) / rpmHighest).toBeLessThan(1e-3);
        expect(Math.abs((highest[index]?.yMm ?? 0) - rpmHighest) / rpmHighest).toBeLessThan(1e-3);
      });
    }),
    { numRuns: CASES },
  );
});

it("diameter against speed has its points, its chart and its borders where they are", () => {
  const bits = [10, 25.4, 38.1, 88.9].map((diameterMm, index) => ({
    name: `Bit ${index}`,
    diameterMm,
    rpm: Math.min(chartRpm(diameterMm), 18_000),
  }));
  const drawn = readBack(
    svg(
      PICTURES["diameter-speed"].draw({ policy: DEFAULT_POLICY, name: "Alder Lane", units: "metric", bits }),
    ),
  );
  const points = drawn.paths.filter(({ of }) => of === "bit");
  bits.forEach(({ diameterMm, rpm }, index) => {
    const ring = points[index]?.rings[0] ?? [];
    const mean = (pick: "xMm" | "yMm") =>
      (Math.max(...ring.map((place) => place[pick])) + Math.min(...ring.map((place) => place[pick]))) / 2;
    expect(mean("xMm")).toBeCloseTo(diameterMm, 1);
    expect(Math.abs(mean("yMm") - rpm)).toBeLessThan(2);
  });
  for (const { xMm, yMm } of ringsOf(drawn, "border").flat()) {
    // v = π·d·n at the policy's 56 m/s, or the fastest that it lets any bit run.
    const want = Math.min(DEFAULT_POLICY.speedMaxRpm, (56 / (Math.PI * (xMm / 1000))) * 60);
    expect(Math.abs(yMm / want - 1)).toBeLessThan(0.002);
    expect(want).toBeCloseTo(Math.min(DEFAULT_POLICY.speedMaxRpm, rpmAtRimSpeed(xMm, 56)), 3);
  }
  // The trade's chart (common practice): 24,000 rpm up to 25.4 mm, 18,000 up to 50.8 mm.
  const chart = ringsOf(drawn, "chart").flat();
  const cornerAt = (mm: number, rpm: number) =>
    chart.some(({ xMm, yMm }) => Math.abs(xMm - mm) < 0.02 && Math.abs(yMm - rpm) < 2);
  expect(cornerAt(25.4, 24_000) && cornerAt(25.4, 18_000) && cornerAt(50.8, 18_000)).toBe(true);
});
