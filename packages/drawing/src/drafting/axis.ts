import type { Point } from "../scene/contour.ts";
import { path, polyline } from "../scene/path.ts";
import type { Item } from "../scene/scene.ts";
import { SMALL_MM } from "./page.ts";
import { textLine } from "./text.ts";

/** A straight scale: a stretch of values on a stretch of paper. */
export type Axis = {
  readonly from: number;
  readonly to: number;
  readonly fromMm: number;
  readonly toMm: number;
};

const TICK_MM = 1.4;
const STEPS = [1, 2, 5, 10];

/** Where a value lies on the paper. */
export function along({ from, to, fromMm, toMm }: Axis, value: number): number {
  return fromMm + ((value - from) / (to - from)) * (toMm - fromMm);
}

/** Round values on an axis, so many at most, from its beginning on. */
export function roundValues({ from, to }: Axis, most: number): number[] {
  const least = (to - from) / most;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = (STEPS.find((each) => each * power >= least) ?? 10) * power;
  const first = Math.ceil(from / step);
  const count = Math.floor(to / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => (first + index) * step);
}

/** A level axis with ticks and numbers under it. */
export function levelAxis(
  axis: Axis,
  yMm: number,
  values: readonly number[],
  said: (value: number) => string,
): Item[] {
  const line = polyline([
    { xMm: axis.fromMm, yMm },
    { xMm: axis.toMm, yMm },
  ]);
  return [
    path({ of: "axis-x" }, line, "medium"),
    ...values.flatMap((value) => {
      const xMm = along(axis, value);
      return [
        tick({ xMm, yMm }, { xMm, yMm: yMm + TICK_MM }),
        textLine(said(value), yMm + TICK_MM + SMALL_MM, { xMm, anchor: "middle", sizeMm: SMALL_MM }),
      ];
    }),
  ];
}

/** An upright axis with ticks and numbers to the left of it. */
export function uprightAxis(
  axis: Axis,
  xMm: number,
  values: readonly number[],
  said: (value: number) => string,
): Item[] {
  const line = polyline([
    { xMm, yMm: axis.fromMm },
    { xMm, yMm: axis.toMm },
  ]);
  return [
    path({ of: "axis-y" }, line, "medium"),
    ...values.flatMap((value) => {
      const yMm = along(axis, value);
      return [
        tick({ xMm: xMm - TICK_MM, yMm }, { xMm, yMm }),
        textLine(said(value), yMm + SMALL_MM * 0.36, {
          xMm: xMm - TICK_MM - 0.8,
          anchor: "end",
          sizeMm: SMALL_MM,
        }),
      ];
    }),
  ];
}

function tick(from: Point, to: Point): Item {
  return path({ of: "tick" }, polyline([from, to]), "thin");
}
