import { DEFAULT_POLICY, type PanelsInput, WOODS } from "@rimwise/domain";
import fc from "fast-check";
import { bits } from "./arbitraries.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const climates = fc
  .tuple(between(5, 95), between(0, 50), between(0, 35), between(0, 35))
  .map(([least, span, coldC, warmC]) => ({
    driest: { relativeHumidityPercent: least, temperatureC: coldC },
    wettest: { relativeHumidityPercent: Math.min(100, least + span), temperatureC: warmC },
  }));

const openings = fc.record(
  {
    widthMm: between(60, 1200),
    heightMm: between(60, 2000),
    count: fc.integer({ min: 1, max: 10 }),
    grainAlong: fc.constantFrom("height" as const, "width" as const),
  },
  { requiredKeys: ["widthMm", "heightMm"] },
);

const raisers = bits.filter(({ form }) => form.kind === "panel-raising");

/** Any job, with sizes to be found. */
export const panelJobs: fc.Arbitrary<PanelsInput> = fc.record(
  {
    openings: fc.array(openings, { minLength: 1, maxLength: 4 }),
    groove: fc.record({ depthMm: between(4, 20), widthMm: between(3, 12) }),
    thicknessMm: between(6, 40),
    wood: fc.constantFrom(...WOODS),
    sawn: fc.constantFrom("flat" as const, "quarter" as const),
    moisture: fc.record(
      { percent: between(3, 20), tolerancePercent: between(0, 3) },
      { requiredKeys: ["percent"] },
    ),
    climate: climates,
    bit: raisers,
    policy: fc.constantFrom(DEFAULT_POLICY, { ...DEFAULT_POLICY, movementSpreadRatio: 0 }),
  },
  { requiredKeys: ["openings", "groove", "thicknessMm", "wood", "moisture", "climate", "policy"] },
);
