import type { Bit, Mark, Show } from "@rimwise/domain";
import { cleared } from "../drafting/cleared.ts";
import { hatched, hatchOf } from "../drafting/hatch.ts";
import { minutesText } from "../drafting/minutes.ts";
import { INNER_WIDTH_MM, LEADING, MARGIN_MM, PAGE_WIDTH_MM, SMALL_MM, TEXT_MM } from "../drafting/page.ts";
import { silhouette, silhouetteSize } from "../drafting/silhouette.ts";
import { heading, paragraph, paragraphs, type Rows, textLine } from "../drafting/text.ts";
import { textWidthMm } from "../font/metrics.ts";
import { path, rectangle } from "../scene/path.ts";
import type { Item, Scene } from "../scene/scene.ts";
import { type DrawnUnits, definePicture } from "./define.ts";

/** One set-up of a day, in the order of work. */
export type DaySetupDrawn = {
  readonly bit: Bit;
  readonly bitName: string;
  /** The router and how it is mounted. */
  readonly station: string;
  readonly mark: Mark | undefined;
  readonly rpm: number;
  /** How much of the bit's cutter stands out. */
  readonly cutterMm: number;
  readonly fenceMm: number | undefined;
  readonly parts: number;
  /** What is cut, in a few words. */
  readonly cuts: string;
  readonly changeMin: number;
  readonly workMin: number;
};

/** What a day is drawn of. */
export type DayDrawn = {
  readonly name: string;
  readonly units: DrawnUnits;
  readonly setups: readonly DaySetupDrawn[];
};

/** A job's day as a strip, and its set-ups one under the other. */
export const dayPicture = definePicture<"day", DayDrawn>({
  kind: "day",
  meaning: "A day's set-ups in order: how long each takes, its bit, mark, height, fence and parts.",
  draw,
});

const STRIP_MM = 9;
const BIT_MM = 20;
const BIT_HIGH_MM = 18;
const NUMBER_MM = 7;
const TEXT_LEFT_MM = MARGIN_MM + NUMBER_MM + BIT_MM + 3;
const CHANGING = hatchOf(1);

function draw({ name, setups }: DayDrawn, show: Show): Scene {
  const head = heading(name);
  const totalMin = setups.reduce((sum, { changeMin, workMin }) => sum + changeMin + workMin, 0);
  const said = paragraphs(
    [
      `About ${minutesText(totalMin)} in ${setups.length} ${setups.length === 1 ? "set-up" : "set-ups"}. Hatched: changing over. White: cutting. Nothing of it is measured.`,
    ],
    head.bottomMm,
  );
  const strip = stripOf(setups, totalMin, said.bottomMm + 1.5);
  let bottomMm = strip.bottomMm + 2;
  const rows: Item[] = [];
  setups.forEach((setup, index) => {
    const row = setupRow(setup, index + 1, bottomMm, show);
    rows.push(...row.items);
    bottomMm = row.bottomMm;
  });
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: bottomMm + MARGIN_MM,
    title: `Day: ${name}`,
    description: setups
      .map((setup, index) => `${index + 1}. ${setup.bitName}: ${linesOf(setup, show).join(" ")}`)
      .join(" "),
    items: [...head.items, ...said.items, ...strip.items, ...rows],
  };
}

/** Time runs to the right: of each set-up the changing over, then the work, with its number where there is room. */
function stripOf(setups: readonly DaySetupDrawn[], totalMin: number, topMm: number): Rows {
  const perMin = totalMin === 0 ? 0 : INNER_WIDTH_MM / totalMin;
  const items: Item[] = [];
  let atMin = 0;
  setups.forEach(({ changeMin, workMin }, index) => {
    const number = index + 1;
    const [startMm, workMm] = [MARGIN_MM + atMin * perMin, MARGIN_MM + (atMin + changeMin) * perMin];
    const endMm = workMm + workMin * perMin;
    const box = (fromMm: number, toMm: number) =>
      rectangle({ xMm: fromMm, yMm: topMm }, { xMm: toMm, yMm: topMm + STRIP_MM });
    items.push(hatched({ of: "changing", number }, box(startMm, workMm), CHANGING));
    items.push(
      path({ of: "changing", number }, box(startMm, workMm), "thin"),
      path({ of: "work", number }, box(workMm, endMm), "thin"),
    );
    items.push(path({ of: "set-up", number }, box(startMm, endMm), "medium"));
    if (textWidthMm(String(number), SMALL_MM, "bold") + 1 <= endMm - startMm) {
      const label = textLine(String(number), topMm + STRIP_MM / 2 + SMALL_MM * 0.36, {
        xMm: (startMm + endMm) / 2,
        anchor: "middle",
        sizeMm: SMALL_MM,
        weight: "bold",
      });
      items.push(...cleared(label));
    }
    atMin += changeMin + workMin;
  });
  const frame = { originXMm: MARGIN_MM, originYMm: topMm, scaleX: perMin || 1, scaleY: 1 };
  return {
    items: [{ kind: "group", of: "strip", label: "The day from left to right", frame, items }],
    bottomMm: topMm + STRIP_MM,
  };
}

function setupRow(setup: DaySetupDrawn, number: number, topMm: number, show: Show): Rows {
  const { bit } = setup;
  const size = silhouetteSize(bit);
  const scale = Math.min(1, (BIT_MM - 2) / size.widthMm, BIT_HIGH_MM / size.heightMm);
  const frame = {
    originXMm: MARGIN_MM + NUMBER_MM + BIT_MM / 2,
    originYMm: topMm + 1.5,
    scaleX: scale,
    scaleY: scale,
  };
  const style = { xMm: TEXT_LEFT_MM, widthMm: PAGE_WIDTH_MM - MARGIN_MM - TEXT_LEFT_MM, sizeMm: SMALL_MM };
  const title = paragraph(setup.bitName, topMm + 0.5, { ...style, sizeMm: TEXT_MM, weight: "bold" }, 1);
  const text = paragraphs(linesOf(setup, show), title.bottomMm, style);
  const bottomMm = Math.max(text.bottomMm, topMm + BIT_HIGH_MM + 3) + 1;
  const box = rectangle({ xMm: MARGIN_MM, yMm: topMm }, { xMm: PAGE_WIDTH_MM - MARGIN_MM, yMm: bottomMm });
  const items: Item[] = [
    path({ of: "row", number }, box, "thin"),
    textLine(String(number), topMm + TEXT_MM * LEADING, {
      xMm: MARGIN_MM + 1.5,
      weight: "bold",
      widthMm: NUMBER_MM,
    }),
    ...silhouette(bit, frame, "medium"),
    ...title.items,
    ...text.items,
  ];
  return {
    items: [{ kind: "group", of: "set-up", label: `Set-up ${number}: ${setup.bitName}`, frame, items }],
    bottomMm,
  };
}

function linesOf(
  { station, mark, rpm, cutterMm, fenceMm, parts, cuts, changeMin, workMin }: DaySetupDrawn,
  show: Show,
): string[] {
  const dial =
    mark === undefined ? show.rotation(rpm) : `mark ${show.mark(mark)}, about ${show.rotation(rpm)}`;
  const fence = fenceMm === undefined ? "" : `, fence ${show.length(fenceMm)}`;
  return [
    `${station}: ${dial}.`,
    `Height ${show.length(cutterMm)}${fence}.`,
    `${cuts}: ${parts} ${parts === 1 ? "part" : "parts"}.`,
    `Changing over ${minutesText(changeMin)}, cutting ${minutesText(workMin)}.`,
  ];
}

/** Minutes as a person says them: nothing of it is measured. */
