import { equilibriumMoisturePercent } from "../wood/emc.ts";
import { MOVEMENT_RANGES } from "../wood/movement.ts";
import type { Climate } from "./panel.ts";

/** Moisture contents in %, the drier first. */
export type MoistureSpan = { readonly driestPercent: number; readonly wettestPercent: number };

/** Equilibrium moisture content means no more than this, %. Source: Wood Handbook Table 4-2's own caution, FPL-GTR-229. */
const MEANINGFUL_STEP_PERCENT = 0.5;

/**
 * The moisture contents wood goes between in this air, by eq. (4-5) of the Wood Handbook, up to fibre saturation. 21.1 °C
 * with 30 and 60 % gives 6.2 and 11.0 %.
 */
export function yearMoisture({ driest, wettest }: Climate): MoistureSpan {
  const ends = [driest, wettest].map((air) =>
    Math.min(
      equilibriumMoisturePercent(air.temperatureC, air.relativeHumidityPercent),
      MOVEMENT_RANGES.moisturePercent.max,
    ),
  );
  // Cold air dries less than warm air of the same humidity, so the ends may come out the other way round.
  return { driestPercent: Math.min(...ends), wettestPercent: Math.max(...ends) };
}

/** The same span widened to the next step that means anything: what a cautious sizing allows for. */
export function widened({ driestPercent, wettestPercent }: MoistureSpan): MoistureSpan {
  return {
    driestPercent: Math.floor(driestPercent / MEANINGFUL_STEP_PERCENT) * MEANINGFUL_STEP_PERCENT,
    wettestPercent: Math.ceil(wettestPercent / MEANINGFUL_STEP_PERCENT) * MEANINGFUL_STEP_PERCENT,
  };
}
