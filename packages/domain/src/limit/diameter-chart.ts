import { MM_PER_INCH } from "../quantity/units.ts";
import { defineLimit } from "./limit.ts";

/** One band of the trade's chart: up to this diameter, at most this speed. */
type Band = { readonly upToMm: number; readonly rpm: number };

/**
 * The trade's stepwise chart, whose bands end at 1, 2 and 2-1/2 in. Source: common practice. It has holes between its bands (1 to
 * 1-1/4, 2 to 2-1/4, 2-1/2 to 3 in); there the lower speed holds.
 */
const CHART: readonly Band[] = [
  { upToMm: MM_PER_INCH, rpm: 24000 },
  { upToMm: 2 * MM_PER_INCH, rpm: 18000 },
  { upToMm: 2.5 * MM_PER_INCH, rpm: 16000 },
  { upToMm: 90, rpm: 12000 },
];

const LAST_BAND: Band = { upToMm: 90, rpm: 12000 };

/**
 * Speed in rpm that the trade's chart gives a bit of this diameter in mm (common practice). Beyond the chart's end the rim is
 * held
 * to the speed it has there, so that a larger bit always turns slower (ours).
 * @example
 * chartRpm(60) // → 16_000
 */
export function chartRpm(diameterMm: number): number {
  const band = CHART.find(({ upToMm }) => diameterMm <= upToMm);
  return band?.rpm ?? (LAST_BAND.rpm * LAST_BAND.upToMm) / diameterMm;
}

/** The trade's chart by diameter. It carries its own margin, so the nominal speed is held against it. */
export const diameterChart = defineLimit({
  name: "diameter-chart",
  strength: "guide",
  formula: "stepwise by diameter: 25.4 mm 24 000, 50.8 mm 18 000, 63.5 mm 16 000, 90 mm 12 000 rpm",
  source: "common practice",
  figure: ({ solid }) => {
    const diameterMm = 2 * solid.rimRadiusMm;
    return { rpm: chartRpm(diameterMm), values: { diameterMm } };
  },
  raisedBy: () => ({ code: "smaller-bit" }),
});
