import { DomainError } from "../quantity/fault.ts";
import { type Range, rangeFaults } from "../quantity/range.ts";

/** What the printed table covers, 30 to 270 °F, to the tenth of a degree outward. Source: Wood Handbook Table 4-2. */
export const EMC_RANGES = {
  temperatureC: { min: -1.2, max: 132.3 },
  relativeHumidityPercent: { min: 0, max: 100 },
} as const satisfies Readonly<Record<string, Range>>;

/**
 * Equilibrium moisture content in % that wood settles at in air of this temperature in °C and relative humidity in %:
 * EMC = (1800/W)·[K·h/(1 − K·h) + (K1·K·h + 2·K1·K2·K²·h²)/(1 + K1·K·h + K1·K2·K²·h²)], the °C set of W, K, K1, K2.
 * Source: Wood Handbook eq. (4-5), p. 4-3. A practical compromise between gaining and losing moisture: good to 0.5 %.
 * Throws a DomainError outside `EMC_RANGES`. 20 °C and 65 % give 12.0 %.
 */
export function equilibriumMoisturePercent(temperatureC: number, relativeHumidityPercent: number): number {
  const faults = [
    ...rangeFaults("/temperatureC", temperatureC, EMC_RANGES.temperatureC),
    ...rangeFaults("/relativeHumidityPercent", relativeHumidityPercent, EMC_RANGES.relativeHumidityPercent),
  ];
  if (faults.length > 0) throw new DomainError(faults);
  const { w, k, k1, k2 } = coefficientsAt(temperatureC);
  const kh = (k * relativeHumidityPercent) / 100;
  const bound = k1 * kh + k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (bound + k1 * k2 * kh * kh) / (1 + bound));
}

/** The °C set printed beside eq. (4-5). The °F set is not the same curve and takes other temperatures. */
function coefficientsAt(t: number) {
  return {
    w: 349 + 1.29 * t + 0.0135 * t * t,
    k: 0.805 + 0.000736 * t - 0.00000273 * t * t,
    k1: 6.27 - 0.00938 * t - 0.000303 * t * t,
    k2: 1.91 + 0.0407 * t - 0.000293 * t * t,
  };
}
