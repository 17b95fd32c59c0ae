import {
  type DialSpeed,
  dialSpeeds,
  type Mark,
  markPosition,
  type Policy,
  type Router,
  type Show,
} from "@rimwise/domain";
import { type Axis, along, levelAxis, roundValues, uprightAxis } from "../drafting/axis.ts";
import { hatched, hatchOf } from "../drafting/hatch.ts";
import { MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM } from "../drafting/page.ts";
import { heading, paragraphs, type Rows } from "../drafting/text.ts";
import { circle, path, polyline } from "../scene/path.ts";
import type { Item, Scene } from "../scene/scene.ts";
import { type DrawnUnits, definePicture } from "./define.ts";

/** What the dial of a router is drawn of. */
export type DialDrawn = {
  readonly router: Router;
  readonly policy: Policy;
  /** What the shop calls the router. */
  readonly name: string;
  readonly units: DrawnUnits;
  /** The bits it runs, each at the mark of a plan or ceiling; absent where the bit may not be run in it at all. */
  readonly bits: readonly {
    readonly name: string;
    readonly mark: Mark | undefined;
    readonly rpm: number | undefined;
  }[];
};

/** One router's dial, and the mark of each of its bits. */
export const dialPicture = definePicture<"dial", DialDrawn>({
  kind: "dial",
  meaning:
    "The speed at each mark of one router's dial, how fast it may really be, and the mark of each of a list of bits.",
  draw,
});

const PLOT_HEIGHT_MM = 52;
const LEFT_MM = MARGIN_MM + 16;
/** Marks with a number, at most: as many as there is room for beside each other. */
const MARKS = 14;
const SPEEDS = 6;

function draw(given: DialDrawn, show: Show): Scene {
  const { router, policy, name, bits } = given;
  const head = heading(`Speed dial: ${name}`);
  const speeds = dialSpeeds(router, policy);
  const plot =
    router.dial === undefined
      ? withoutDial(speeds, head.bottomMm, show)
      : plotted(given, speeds, head.bottomMm, show);
  const lines = bitLines(bits, show);
  const foot = paragraphs(lines, plot.bottomMm + 1.5);
  const cautions = paragraphs(
    [
      "Every mark is the fastest allowed for its bit by itself: the plan of a cut may say less. What is marked on the bit comes first.",
    ],
    foot.bottomMm + 1,
    { sizeMm: SMALL_MM },
  );
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: cautions.bottomMm + MARGIN_MM,
    title: `Speed dial: ${name}`,
    description: [...speeds.map((speed) => speedSentence(speed, show)), ...lines].join(" "),
    items: [...head.items, ...plot.items, ...foot.items, ...cautions.items],
  };
}

/** Nominal speed over the dial, with the band up to how fast it may be; readings as dots. */
function plotted({ bits }: DialDrawn, speeds: readonly DialSpeed[], topMm: number, show: Show): Rows {
  const placed = speeds.flatMap(({ mark, ...speed }) =>
    mark === undefined ? [] : [{ ...speed, mark, at: markPosition(mark) }],
  );
  const [first, last] = [placed[0]?.at ?? 0, placed.at(-1)?.at ?? 1];
  const fastest = Math.max(...placed.map(({ rpmHighest }) => rpmHighest));
  const x: Axis = { from: first - 0.3, to: last + 0.3, fromMm: LEFT_MM, toMm: PAGE_WIDTH_MM - MARGIN_MM - 3 };
  const y: Axis = { from: 0, to: fastest * 1.05, fromMm: topMm + PLOT_HEIGHT_MM, toMm: topMm + 4 };
  const place = (at: number, rpm: number) => ({ xMm: along(x, at), yMm: along(y, rpm) });
  const nominal = placed.map(({ at, rpm }) => place(at, rpm));
  const highest = placed.map(({ at, rpmHighest }) => place(at, rpmHighest));
  const uncertain = polyline([...nominal, ...[...highest].reverse()], true);
  const read = placed.filter(({ basis }) => basis === "reading");
  const used = placed.filter(({ at }) =>
    bits.some(({ mark }) => mark !== undefined && markPosition(mark) === at),
  );
  const whole = placed.filter(({ at }) => Number.isInteger(at));
  const every = Math.max(1, Math.ceil(whole.length / MARKS));
  const names = new Map(placed.map(({ at, mark }) => [at, show.mark(mark)]));
  const items: Item[] = [
    hatched({ of: "uncertainty" }, uncertain, hatchOf(1)),
    path({ of: "highest" }, polyline(highest), "dashed"),
    path({ of: "nominal" }, polyline(nominal), "medium"),
    path(
      { of: "reading" },
      read.flatMap(({ at, rpm }) => circle(place(at, rpm), 0.9)),
      "medium",
      "paper",
    ),
    path(
      { of: "used" },
      used.flatMap(({ at, rpm }) => polyline([place(at, 0), place(at, rpm)])),
      "heavy",
    ),
    ...levelAxis(
      x,
      y.fromMm,
      whole.filter((_, index) => index % every === 0).map(({ at }) => at),
      (at) => names.get(at) ?? "",
    ),
    ...uprightAxis(y, x.fromMm, roundValues(y, SPEEDS).slice(1), (rpm) =>
      show.rotation(rpm).replace(" rpm", ""),
    ),
  ];
  const legend = paragraphs(
    [
      "Turns a minute at each mark. Hatched: how fast it may really run. Rings: measured. Heavy: a mark that a bit below uses.",
    ],
    y.fromMm + 6.5,
    { sizeMm: SMALL_MM },
  );
  const frame = {
    originXMm: along(x, 0),
    originYMm: y.fromMm,
    scaleX: (x.toMm - x.fromMm) / (x.to - x.from),
    scaleY: (y.toMm - y.fromMm) / y.to,
  };
  return {
    items: [{ kind: "group", of: "dial", label: "Speed at each mark", frame, items }, ...legend.items],
    bottomMm: legend.bottomMm,
  };
}

function withoutDial(speeds: readonly DialSpeed[], topMm: number, show: Show): Rows {
  return paragraphs(
    ["There is no dial to set.", ...speeds.map((speed) => speedSentence(speed, show))],
    topMm,
  );
}

function speedSentence({ mark, rpm, rpmHighest }: DialSpeed, show: Show): string {
  const at = mark === undefined ? "It runs at" : `Mark ${show.mark(mark)}:`;
  return `${at} about ${show.rotation(rpm)}, at most ${show.rotation(rpmHighest)}.`;
}

/** The bits of each mark, slowest first; then those that it may not run. */
function bitLines(bits: DialDrawn["bits"], show: Show): string[] {
  const run = bits
    .filter(({ rpm }) => rpm !== undefined)
    .sort((one, other) => (one.rpm ?? 0) - (other.rpm ?? 0));
  const groups = new Map<string, string[]>();
  for (const { name, mark, rpm = 0 } of run) {
    const title =
      mark === undefined ? show.rotation(rpm) : `Mark ${show.mark(mark)}, about ${show.rotation(rpm)}`;
    groups.set(title, [...(groups.get(title) ?? []), name]);
  }
  const never = bits.filter(({ rpm }) => rpm === undefined).map(({ name }) => name);
  return [
    ...[...groups].map(([title, names]) => `${title}: ${names.join("; ")}.`),
    ...(never.length === 0 ? [] : [`Not in this router: ${never.join("; ")}.`]),
  ];
}
