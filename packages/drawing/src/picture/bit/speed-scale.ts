import { M_PER_S_PER_MPH, rimSpeedMPerS } from "@rimwise/domain";
import { MARGIN_MM, SMALL_MM } from "../../drafting/page.ts";
import { textLine } from "../../drafting/text.ts";
import { path, polyline } from "../../scene/path.ts";
import type { GroupItem, Item } from "../../scene/scene.ts";
import type { DrawnUnits } from "../define.ts";
import type { BitLayout } from "./layout.ts";

/** The room the scale takes above a bit, mm. */
export const SPEED_SCALE_MM = 8;

/** Ticks are at least so far apart, mm: as wide as their numbers. */
const LEAST_APART_MM = 7;
/** A last tick nearer to the axis than this would stand in the nought. */
const LEAST_LAST_MM = 4.5;
const TICK_MM = 1.6;
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200];

/**
 * How fast each place of the edge runs: a scale over the right half of the bit, from its axis to its rim. v = π·d·n, so it rises evenly with
 * the distance from the axis (geometry). None for a bit so thin that no tick fits beside the axis: the sentence says its rim's speed.
 */
export function speedScale(
  rpm: number,
  { frame, rimRadiusMm, scale }: BitLayout,
  topMm: number,
  units: DrawnUnits,
): GroupItem[] {
  const lineMm = topMm + SPEED_SCALE_MM - TICK_MM - 1;
  const perUnit = units === "metric" ? 1 : M_PER_S_PER_MPH;
  // Paper from the axis to the place that runs one unit fast.
  const paperPerUnitMm = (scale * perUnit) / rimSpeedMPerS(2, rpm);
  const rimMm = scale * rimRadiusMm;
  const atRim = rimMm / paperPerUnitMm;
  const even = STEPS.find((each) => each * paperPerUnitMm >= LEAST_APART_MM) ?? atRim;
  // A rim so near to the axis has one tick beside the nought, at the last whole number before it.
  const step = even <= atRim ? even : Math.max(1, Math.floor(atRim));
  if (step * paperPerUnitMm < LEAST_LAST_MM || step > atRim) return [];
  const ticks: Item[] = [];
  for (let value = 0; value * paperPerUnitMm <= rimMm; value += step) {
    const xMm = frame.originXMm + value * paperPerUnitMm;
    ticks.push(
      path(
        { of: "speed-tick", number: value },
        polyline([
          { xMm, yMm: lineMm },
          { xMm, yMm: lineMm + TICK_MM },
        ]),
        "thin",
      ),
      textLine(String(value), lineMm - 0.9, { xMm, anchor: "middle", sizeMm: SMALL_MM }),
    );
  }
  const name = `Speed of the edge, ${units === "metric" ? "m/s" : "mph"}`;
  const leftMm = frame.originXMm - 4;
  return [
    {
      kind: "group",
      of: "speed-scale",
      label: name,
      frame: { originXMm: frame.originXMm, originYMm: lineMm, scaleX: paperPerUnitMm, scaleY: 1 },
      items: [
        textLine(name, lineMm + 1, {
          xMm: leftMm,
          anchor: "end",
          sizeMm: SMALL_MM,
          widthMm: leftMm - MARGIN_MM,
        }),
        path(
          { of: "speed-axis" },
          polyline([
            { xMm: frame.originXMm, yMm: lineMm },
            { xMm: frame.originXMm + rimMm, yMm: lineMm },
          ]),
          "medium",
        ),
        ...ticks,
      ],
    },
  ];
}
