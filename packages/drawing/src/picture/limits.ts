import {
  ADVICE,
  describeLimit,
  describeRaisedBy,
  type LimitFinding,
  limitTitle,
  type Plan,
  type Show,
} from "@rimwise/domain";
import { type Axis, along, levelAxis, roundValues } from "../drafting/axis.ts";
import { FORBIDDEN, hatched } from "../drafting/hatch.ts";
import { LEADING, MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../drafting/page.ts";
import { heading, paragraphs, textLine } from "../drafting/text.ts";
import { path, polyline, rectangle } from "../scene/path.ts";
import type { Item, Scene } from "../scene/scene.ts";
import { type DrawnUnits, definePicture } from "./define.ts";

/** What the limits of a plan are drawn of. */
export type LimitsDrawn = {
  readonly plan: Pick<Plan, "limits" | "speed" | "verdict">;
  /** What the shop calls bit and router. */
  readonly name: string;
  readonly units: DrawnUnits;
};

/** Every reason not to spin faster, on one axis. */
export const limitsPicture = definePicture<"limits", LimitsDrawn>({
  kind: "limits",
  meaning:
    "Every limit of the speed on one axis, the lowest first: that one binds, and what is beyond it is hatched.",
  draw,
});

const MEANINGS =
  "A hard limit holds for the fastest the router may really run at a mark, a guide for the speed of the mark.";

const NAMES_MM = 46;
const AXIS: Pick<Axis, "fromMm" | "toMm"> = {
  fromMm: MARGIN_MM + NAMES_MM,
  toMm: PAGE_WIDTH_MM - MARGIN_MM - 4,
};
const BAND_MM = 5;
const ROW_MM = 2 * SMALL_MM * LEADING + 1.4;
/** The axis ends where so many times the lowest limit would be: what lies far beyond says so with an arrow. */
const MOST_OF_LOWEST = 2.4;
/** Ticks, at most: their numbers are as wide as "25,000". */
const TICKS = 4;

function draw({ plan, name }: LimitsDrawn, show: Show): Scene {
  const { limits, speed } = plan;
  const highest = Math.max(...limits.map(({ rpm }) => rpm), speed.setting?.rpmHighest ?? 0);
  const to = Math.min(highest * 1.05, speed.ceilingRpm * MOST_OF_LOWEST);
  const axis: Axis = { from: 0, to, ...AXIS };
  const head = heading(`Speed limits: ${name}`);
  const said = paragraphs(sentences(plan, show), head.bottomMm);
  const topMm = said.bottomMm + 2;
  const rowsMm = topMm + BAND_MM + 8;
  const rows = limits.flatMap((limit, index) => row(limit, index === 0, axis, rowsMm + index * ROW_MM, show));
  const foot = paragraphs([MEANINGS, ADVICE], rowsMm + limits.length * ROW_MM + 1, { sizeMm: SMALL_MM });
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: foot.bottomMm + MARGIN_MM,
    title: `Speed limits: ${name}`,
    description: [
      ...sentences(plan, show),
      ...limits.map((limit) => describeLimit(limit, show)),
      ADVICE,
    ].join(" "),
    items: [
      ...head.items,
      ...said.items,
      {
        kind: "group",
        of: "limits",
        label: "The limits, in turns a minute",
        frame: { originXMm: axis.fromMm, originYMm: 0, scaleX: (axis.toMm - axis.fromMm) / to, scaleY: 1 },
        items: [...band(plan, axis, topMm, show), ...rows],
      },
      ...foot.items,
    ],
  };
}

function sentences({ limits, speed, verdict }: LimitsDrawn["plan"], show: Show): string[] {
  const [binding] = limits;
  const { setting, raisedBy } = speed;
  return [
    ...(verdict === "do-not-run" ? ["Do not run this cut: no speed is given."] : []),
    ...(binding === undefined ? [] : [`The lowest limit binds: ${describeLimit(binding, show)}`]),
    ...(raisedBy === undefined ? [] : [describeRaisedBy(raisedBy, show)]),
    ...(setting === undefined
      ? []
      : [
          `Set: ${setting.mark === undefined ? "" : `mark ${show.mark(setting.mark)}, `}about ${show.rotation(setting.rpm)}; it may really be up to ${show.rotation(setting.rpmHighest)} (the black bar).`,
        ]),
  ];
}

/** The axis, what is forbidden on it, and where the setting lies with its uncertainty. */
function band({ speed }: LimitsDrawn["plan"], axis: Axis, topMm: number, show: Show): Item[] {
  const ceilingMm = along(axis, Math.min(speed.ceilingRpm, axis.to));
  const forbidden = rectangle({ xMm: ceilingMm, yMm: topMm }, { xMm: axis.toMm, yMm: topMm + BAND_MM });
  const { setting } = speed;
  const lineMm = topMm + BAND_MM;
  return [
    hatched({ of: "forbidden" }, forbidden, FORBIDDEN),
    path(
      { of: "ceiling" },
      polyline([
        { xMm: ceilingMm, yMm: topMm - 1 },
        { xMm: ceilingMm, yMm: lineMm },
      ]),
      "heavy",
    ),
    ...(setting === undefined
      ? []
      : [
          path(
            { of: "setting" },
            rectangle(
              { xMm: along(axis, setting.rpm), yMm: lineMm - 3.2 },
              { xMm: along(axis, Math.min(axis.to, setting.rpmHighest)), yMm: lineMm - 1 },
            ),
            "medium",
            "ink",
          ),
        ]),
    ...levelAxis(axis, lineMm, roundValues(axis, TICKS), (rpm) => show.rotation(rpm).replace(" rpm", "")),
    textLine("rpm", lineMm + 1.4 + SMALL_MM, { xMm: AXIS.fromMm - 4, anchor: "end", sizeMm: SMALL_MM }),
  ];
}

/** One limit: its name and speed, and a line that ends there; an arrow if it ends beyond the axis. */
function row(limit: LimitFinding, binds: boolean, axis: Axis, topMm: number, show: Show): Item[] {
  const weight = binds ? "bold" : "normal";
  const isBeyond = limit.rpm > axis.to;
  const endMm = isBeyond ? axis.toMm : along(axis, limit.rpm);
  const yMm = topMm + SMALL_MM * 0.7;
  const style = { sizeMm: SMALL_MM, widthMm: NAMES_MM - 3, weight } as const;
  const end = isBeyond
    ? polyline([
        { xMm: endMm - 2, yMm: yMm - 1.2 },
        { xMm: endMm, yMm },
        { xMm: endMm - 2, yMm: yMm + 1.2 },
      ])
    : polyline([
        { xMm: endMm, yMm: yMm - 2 },
        { xMm: endMm, yMm: yMm + 2 },
      ]);
  return [
    textLine(titled(limitTitle(limit.name)), topMm + SMALL_MM, style),
    textLine(`${show.rotation(limit.rpm)}, ${limit.strength}`, topMm + SMALL_MM * (1 + LEADING), {
      ...style,
      weight: "normal",
    }),
    path(
      { of: "limit" },
      polyline([
        { xMm: axis.fromMm, yMm },
        { xMm: endMm, yMm },
      ]),
      binds ? "heavy" : "thin",
    ),
    path({ of: isBeyond ? "limit-beyond" : "limit-end" }, end, binds ? "heavy" : "medium"),
  ];
}

function titled(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
