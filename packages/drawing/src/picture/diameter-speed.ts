import { chartRpm, type Policy, rimSpeedMPerS, rpmAtRimSpeed, type Show } from "@rimwise/domain";
import { type Axis, along, levelAxis, roundValues, uprightAxis } from "../drafting/axis.ts";
import { cleared } from "../drafting/cleared.ts";
import { type Box, freePlace } from "../drafting/free-place.ts";
import { FORBIDDEN, hatched } from "../drafting/hatch.ts";
import { MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../drafting/page.ts";
import { heading, paragraphs, textLine } from "../drafting/text.ts";
import type { Point } from "../scene/contour.ts";
import { circle, path, polyline } from "../scene/path.ts";
import type { Item, Scene, TextItem } from "../scene/scene.ts";
import { textBox } from "../scene/text-box.ts";
import { type DrawnUnits, definePicture } from "./define.ts";

/** What diameter against speed is drawn of. */
export type DiameterSpeedDrawn = {
  readonly policy: Policy;
  readonly name: string;
  readonly units: DrawnUnits;
  /** The shop's bits, each at the fastest it may run. */
  readonly bits: readonly { readonly name: string; readonly diameterMm: number; readonly rpm: number }[];
};

/** All bits of a shop in one plot. */
export const diameterSpeedPicture = definePicture<"diameter-speed", DiameterSpeedDrawn>({
  kind: "diameter-speed",
  meaning:
    "Diameter against speed, with lines of equal rim speed, the shop's bits as points, and what is never allowed hatched.",
  draw,
});

const PLOT_HEIGHT_MM = 88;
const LEFT_MM = MARGIN_MM + 15;
const DOT_MM = 0.8;
const SHARES_OF_RIM = [0.25, 0.5, 0.75];
const LEAST_DIAMETER_MM = 60;
const CURVE_STEPS = 48;
/** Steps of the chart are looked for so closely, mm. */
const STEP_MM = 1;
const HALVED_TO_MM = 0.001;

function draw({ policy, name, bits, units }: DiameterSpeedDrawn, show: Show): Scene {
  const head = heading(name);
  const topMm = head.bottomMm + 2;
  const widestMm = Math.max(LEAST_DIAMETER_MM, ...bits.map(({ diameterMm }) => diameterMm)) * 1.08;
  const unitMm = units === "metric" ? 1 : MM_PER_INCH;
  const x: Axis = { from: 0, to: widestMm, fromMm: LEFT_MM, toMm: PAGE_WIDTH_MM - MARGIN_MM - 2 };
  const y: Axis = { from: 0, to: policy.speedMaxRpm * 1.12, fromMm: topMm + PLOT_HEIGHT_MM, toMm: topMm };
  const place = (diameterMm: number, rpm: number): Point => ({
    xMm: along(x, diameterMm),
    yMm: along(y, rpm),
  });
  // The border's corner lies where the fastest speed makes the fastest rim: v = π·d·n gives d of n as it gives n of d.
  const cornerMm = Math.min(widestMm, rpmAtRimSpeed(policy.speedMaxRpm, policy.rimSpeedMaxMPerS));
  const byRim = curve(x, (diameterMm) => rpmAtRimSpeed(diameterMm, policy.rimSpeedMaxMPerS));
  const allowed = [
    [0, policy.speedMaxRpm] as const,
    [cornerMm, policy.speedMaxRpm] as const,
    ...byRim.filter(([diameterMm]) => diameterMm > cornerMm),
  ];
  const border = allowed.map(([diameterMm, rpm]) => place(diameterMm, rpm));
  const forbidden = polyline([...border, place(widestMm, y.to), place(0, y.to)], true);
  const chart = steps(x, (diameterMm) => Math.min(y.to, chartRpm(diameterMm))).map(([diameterMm, rpm]) =>
    place(diameterMm, rpm),
  );
  const equal = SHARES_OF_RIM.map((share) => equalRim(share * policy.rimSpeedMaxMPerS, x, y, place, show));
  const points = numbered(
    bits,
    place,
    equal.flatMap(({ labels }) => labels),
  );
  const inches: Axis = { ...x, to: widestMm / unitMm };
  const lines = [
    `Hatched: over ${show.speed(policy.rimSpeedMaxMPerS)} at the rim, or over ${show.rotation(policy.speedMaxRpm)}. Dashed: the trade's chart by diameter. Thin: equal rim speed.`,
    ...bits.map(
      (bit, index) =>
        `${index + 1}  ${bit.name}: ${show.length(bit.diameterMm)}, ${show.rotation(bit.rpm)}, ${show.speed(rimSpeedMPerS(bit.diameterMm, bit.rpm))} at the rim.`,
    ),
    "A point is the fastest that its bit may run; a plan may say less.",
  ];
  const foot = paragraphs(lines, y.fromMm + 11, { sizeMm: SMALL_MM });
  const items: Item[] = [
    hatched({ of: "forbidden" }, forbidden, FORBIDDEN),
    path({ of: "border" }, polyline(border), "heavy"),
    path({ of: "chart" }, polyline(chart), "dashed"),
    ...equal.flatMap(({ items }) => items),
    ...points,
    ...levelAxis(inches, y.fromMm, roundValues(inches, 8), (value) => String(Number(value.toPrecision(3)))),
    ...uprightAxis(y, x.fromMm, roundValues(y, 6).slice(1), (rpm) => show.rotation(rpm).replace(" rpm", "")),
    textLine(`Diameter, ${units === "metric" ? "mm" : "in"}; speed in rpm`, y.fromMm + 9, {
      xMm: x.toMm,
      anchor: "end",
      sizeMm: SMALL_MM,
    }),
  ];
  const frame = {
    originXMm: x.fromMm,
    originYMm: y.fromMm,
    scaleX: (x.toMm - x.fromMm) / x.to,
    scaleY: (y.toMm - y.fromMm) / y.to,
  };
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: foot.bottomMm + MARGIN_MM,
    title: name,
    description: lines.join(" "),
    items: [
      ...head.items,
      { kind: "group", of: "diameter-speed", label: "Diameter against speed", frame, items },
      ...foot.items,
    ],
  };
}

/** Exactly 25.4 mm are an inch. Source: the inch of 1959. */
const MM_PER_INCH = 25.4;

/** A falling line over the diameters, at more places where it is steep. */
function curve({ to }: Axis, rpmAt: (diameterMm: number) => number): (readonly [number, number])[] {
  return Array.from({ length: CURVE_STEPS + 1 }, (_, index) => {
    const diameterMm = Math.max(0.5, to * (index / CURVE_STEPS) ** 1.6);
    return [diameterMm, rpmAt(diameterMm)] as const;
  });
}

/** A line of equal rim speed as far as it lies in the plot, with its speed at its end. */
function equalRim(
  mPerS: number,
  x: Axis,
  y: Axis,
  place: (diameterMm: number, rpm: number) => Point,
  show: Show,
) {
  const inside = curve(x, (diameterMm) => rpmAtRimSpeed(diameterMm, mPerS)).filter(([, rpm]) => rpm <= y.to);
  const end = place(x.to, rpmAtRimSpeed(x.to, mPerS));
  const label = textLine(show.speed(mPerS), end.yMm - 0.8, { xMm: x.toMm, anchor: "end", sizeMm: SMALL_MM });
  const line = path(
    { of: "equal-rim" },
    polyline(inside.map(([diameterMm, rpm]) => place(diameterMm, rpm))),
    "thin",
  );
  return { items: [line, ...cleared(label)], labels: [label] };
}

/** Each bit as a point, with its number beside it where there is room; a point without one is found by its sizes in the list. */
function numbered(
  bits: DiameterSpeedDrawn["bits"],
  place: (diameterMm: number, rpm: number) => Point,
  labels: readonly TextItem[],
): Item[] {
  const dots = bits.map(({ diameterMm, rpm }) => place(diameterMm, rpm));
  const taken: readonly Box[] = [
    ...labels.map(textBox),
    ...dots.map(({ xMm, yMm }) => ({
      leftMm: xMm - DOT_MM,
      rightMm: xMm + DOT_MM,
      topMm: yMm - DOT_MM,
      bottomMm: yMm + DOT_MM,
    })),
  ];
  const numbers: TextItem[] = [];
  for (const [dot, named] of atOnePlace(dots)) {
    const label = freePlace(named.join(", "), dot, taken, numbers);
    if (label !== undefined) numbers.push(label);
  }
  return [
    ...dots.map((dot, index) => path({ of: "bit", number: index + 1 }, circle(dot, DOT_MM), "medium", "ink")),
    ...numbers,
  ];
}

/** The numbers of points that cannot be told apart, by the first of them. */
function atOnePlace(dots: readonly Point[]): Map<Point, number[]> {
  const places = new Map<Point, number[]>();
  for (const [index, dot] of dots.entries()) {
    const first = [...places.keys()].find(
      (other) => Math.hypot(other.xMm - dot.xMm, other.yMm - dot.yMm) < DOT_MM,
    );
    places.set(first ?? dot, [...(places.get(first ?? dot) ?? []), index + 1]);
  }
  return places;
}

/** A line that falls in steps: level to where the speed changes, found by halving, and down. */
function steps({ to }: Axis, rpmAt: (diameterMm: number) => number): (readonly [number, number])[] {
  const corners: (readonly [number, number])[] = [[0, rpmAt(STEP_MM)]];
  for (let diameterMm = STEP_MM; diameterMm < to; diameterMm += STEP_MM) {
    const [before, after] = [rpmAt(diameterMm), rpmAt(diameterMm + STEP_MM)];
    if (before === after) continue;
    let [low, high] = [diameterMm, diameterMm + STEP_MM];
    while (high - low > HALVED_TO_MM) {
      const middle = (low + high) / 2;
      if (rpmAt(middle) === before) low = middle;
      else high = middle;
    }
    corners.push([low, before], [low, after]);
  }
  return [...corners, [to, rpmAt(to)]];
}
