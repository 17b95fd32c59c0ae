import { bitFaults } from "../bit/faults.ts";
import { type Fault, faultsUnder } from "../quantity/fault.ts";
import { rangeFaults } from "../quantity/range.ts";
import { type Climate, type Opening, PANEL_RANGES, type PanelsInput } from "./panel.ts";

/** Everything wrong with what panels are sized from. Pointers start at the input. */
export function panelFaults(input: PanelsInput): Fault[] {
  const { openings, groove, thicknessMm, moisture, climate, bit } = input;
  return [
    ...rangeFaults("/openings", openings.length, PANEL_RANGES.openings),
    ...openings.flatMap((opening, index) => faultsUnder(`/openings/${index}`, openingFaults(opening))),
    ...rangeFaults("/groove/depthMm", groove.depthMm, PANEL_RANGES.grooveDepthMm),
    ...rangeFaults("/groove/widthMm", groove.widthMm, PANEL_RANGES.grooveWidthMm),
    ...rangeFaults("/thicknessMm", thicknessMm, PANEL_RANGES.thicknessMm),
    ...rangeFaults("/moisture/percent", moisture.percent, PANEL_RANGES.moisturePercent),
    ...rangeFaults(
      "/moisture/tolerancePercent",
      moisture.tolerancePercent,
      PANEL_RANGES.moistureTolerancePercent,
    ),
    ...faultsUnder("/climate", climateFaults(climate)),
    ...(bit === undefined ? [] : faultsUnder("/bit", bitFaults(bit))),
  ];
}

function openingFaults({ widthMm, heightMm, count, panel }: Opening): Fault[] {
  const isWhole = count === undefined || Number.isInteger(count);
  return [
    ...rangeFaults("/widthMm", widthMm, PANEL_RANGES.openingMm),
    ...rangeFaults("/heightMm", heightMm, PANEL_RANGES.openingMm),
    ...rangeFaults("/count", isWhole ? count : Number.NaN, PANEL_RANGES.count),
    ...rangeFaults("/panel/widthMm", panel?.widthMm, PANEL_RANGES.panelMm),
    ...rangeFaults("/panel/heightMm", panel?.heightMm, PANEL_RANGES.panelMm),
  ];
}

function climateFaults({ driest, wettest }: Climate): Fault[] {
  const single = Object.entries({ driest, wettest }).flatMap(([end, air]) => [
    ...rangeFaults(`/${end}/temperatureC`, air.temperatureC, PANEL_RANGES.temperatureC),
    ...rangeFaults(
      `/${end}/relativeHumidityPercent`,
      air.relativeHumidityPercent,
      PANEL_RANGES.relativeHumidityPercent,
    ),
  ]);
  if (single.length > 0) return single;
  const upTo = { min: 0, max: wettest.relativeHumidityPercent };
  return rangeFaults("/driest/relativeHumidityPercent", driest.relativeHumidityPercent, upTo);
}
